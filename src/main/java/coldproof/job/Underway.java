package coldproof.job;

import coldproof.plan.Position;
import java.util.List;
import java.util.OptionalDouble;

/** Is told what goes on while a workload runs, in the order begins, goesOn every two seconds, ends. */
public interface Underway {
    /** Says nothing. */
    Underway QUIET = new Underway() {};

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
