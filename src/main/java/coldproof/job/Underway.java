package coldproof.job;

import coldproof.plan.Position;
import java.util.List;
import java.util.OptionalDouble;

/** Is told what goes on around a workload: waits and goesOn every two seconds, ends when it has ended or could not be started. */
public interface Underway {
    /** Says nothing. */
    Underway QUIET = new Underway() {};

    /**
     * A trial waits for its start conditions.
     *
     * @param elapsedSeconds since it began to
     * @param deviations what does not hold yet, a sentence each
     */
    default void waits(double elapsedSeconds, List<String> deviations) {}

    /** The workload of a trial is about to be started. */
    default void begins(Position position, List<String> command) {}

    /**
     * It runs.
     *
     * @param elapsedSeconds since it was started
     * @param dieCelsius hottest die sensor, where there is one
     * @param batteryPercent lowest charge of a battery, where there is one
     */
    default void goesOn(double elapsedSeconds, OptionalDouble dieCelsius, OptionalDouble batteryPercent) {}

    /** It has ended, or could not be started. */
    default void ends() {}
}
