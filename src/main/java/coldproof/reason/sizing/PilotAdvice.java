package coldproof.reason.sizing;

import coldproof.plan.Plan;
import coldproof.quantity.Interval;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How well the noise has to be known, and what that costs. Assurance is the power averaged over what is not known about the noise; power at
 * a point takes the noise for certain.
 *
 * @param plan the plan
 * @param power as laid out, if the noise is exactly what the plan says
 * @param assurance as laid out, with the degrees of freedom the plan gives its noise; empty for a guess
 * @param degreesOfFreedom behind the noise of what is compared; empty for a guess
 * @param pilots pilots that could be run, from the smallest on
 * @param best the pilot that makes pilot and study together cheapest; empty where none reaches the wanted assurance
 */
public record PilotAdvice(Plan plan, double power, OptionalDouble assurance, OptionalDouble degreesOfFreedom, List<Pilot> pilots, Optional<Pilot> best) {
    /** Copies. */
    public PilotAdvice {
        pilots = List.copyOf(pilots);
    }

    /**
     * A pilot of baseline trials, supposing it confirms the noise the plan assumes.
     *
     * @param sessions of the baseline
     * @param trials in each
     * @param degreesOfFreedom behind the noise of what is compared, afterwards
     * @param noise 80 % interval of the true noise as a multiple of the estimate
     * @param minutes it takes; NaN where the plan gives no times
     * @param assurance of the plan as laid out
     * @param needed units of baseline and changed level for the wanted assurance; empty where more than can be run
     * @param minutesInAll of pilot and that study; NaN likewise
     */
    public record Pilot(int sessions, int trials, double degreesOfFreedom, Interval noise, double minutes, double assurance, Optional<List<Integer>> needed,
            double minutesInAll) {}
}
