package coldproof.plan;

import java.util.OptionalDouble;

/**
 * The noise planned with, and how well it is known.
 *
 * @param runCvPercent run-to-run coefficient of variation, percent
 * @param sessionCvPercent session-to-session coefficient of variation, percent; 0 when there is none or it is not known
 * @param runDf degrees of freedom behind the run-to-run noise, where it was measured
 * @param sessionDf degrees of freedom behind the session-to-session noise, where it was measured
 * @param trialsPerSession trials of one condition in a session where it was measured; by it and the degrees of freedom the session noise is known
 * @param from where it comes from, in words, such as "pilot" or "guess"
 */
public record NoiseAssumption(double runCvPercent, double sessionCvPercent, OptionalDouble runDf, OptionalDouble sessionDf,
        OptionalDouble trialsPerSession, String from) {
    /** Refuses negative noise. */
    public NoiseAssumption {
        if (!(runCvPercent >= 0 && sessionCvPercent >= 0)) {
            throw new IllegalArgumentException("noise must be 0 % or more, not " + runCvPercent + " % and " + sessionCvPercent + " %");
        }
    }

    /** Where it is not known how many trials the sessions had. */
    public NoiseAssumption(double runCvPercent, double sessionCvPercent, OptionalDouble runDf, OptionalDouble sessionDf, String from) {
        this(runCvPercent, sessionCvPercent, runDf, sessionDf, OptionalDouble.empty(), from);
    }
}
