package coldproof.reason.verdict;

import coldproof.plan.Better;
import coldproof.plan.Change;
import coldproof.plan.Claim;
import coldproof.plan.NoiseAssumption;
import java.util.Optional;

/**
 * What is asked of the trials.
 *
 * @param factor the compared factor
 * @param baseline the level compared with
 * @param against the changed level
 * @param better which way of the metric is good
 * @param mattersPercent the smallest change worth having, percent, above 0
 * @param claim what is to be shown
 * @param falseAlarm two-sided error rate of a change that is none, in (0, 0.5)
 * @param change how often the factor was set; empty: found from the trials
 * @param carriedIn noise with degrees of freedom from earlier work, used where the trials have none of their own
 * @param poolsCarriedIn whether the noise carried in is pooled with that of the trials in every case
 * @param power wanted of what is still needed, in (0, 1): 1 - missed gain
 */
public record Question(String factor, String baseline, String against, Better better, double mattersPercent, Claim claim, double falseAlarm,
        Optional<Change> change, Optional<NoiseAssumption> carriedIn, boolean poolsCarriedIn, double power) {
    private static final double USUAL_POWER = 0.9;

    /** Refuses a question that cannot be judged. */
    public Question {
        if (!(mattersPercent > 0 && falseAlarm > 0 && falseAlarm < 0.5)) {
            throw new IllegalArgumentException("matters " + mattersPercent + " % must be above 0, false alarm " + falseAlarm + " in (0, 0.5)");
        }
        if (!(power > 0 && power < 1)) {
            throw new IllegalArgumentException("power " + power + " is outside (0, 1)");
        }
    }

    /** With a power of nine in ten. */
    public Question(String factor, String baseline, String against, Better better, double mattersPercent, Claim claim, double falseAlarm,
            Optional<Change> change, Optional<NoiseAssumption> carriedIn) {
        this(factor, baseline, against, better, mattersPercent, claim, falseAlarm, change, carriedIn, USUAL_POWER);
    }

    /** Noise carried in counts only where the trials have none of their own. */
    public Question(String factor, String baseline, String against, Better better, double mattersPercent, Claim claim, double falseAlarm,
            Optional<Change> change, Optional<NoiseAssumption> carriedIn, double power) {
        this(factor, baseline, against, better, mattersPercent, claim, falseAlarm, change, carriedIn, false, power);
    }

    /** The same question with noise pooled in from elsewhere. */
    public Question pooledWith(NoiseAssumption noise) {
        return new Question(factor, baseline, against, better, mattersPercent, claim, falseAlarm, change, Optional.of(noise), true, power);
    }

    /** The margin on the log scale: {@code ln(1 + matters)}. */
    public double margin() {
        return Math.log1p(mattersPercent / 100);
    }
}
