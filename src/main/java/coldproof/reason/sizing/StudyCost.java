package coldproof.reason.sizing;

import coldproof.plan.Budget;
import java.util.List;

/**
 * What a study costs.
 *
 * @param trialSeconds one trial with what belongs to it, s, above 0
 * @param baseline a session of the baseline
 * @param against a session of each changed level, one or more
 * @param travelSecondsPerOuting way out and back, s, once for each outing, 0 or more
 * @param outdoorWeight what a second outdoors counts against one indoors, 1 or more
 * @param wattHoursOpening energy a session takes before its first trial, Wh, 0 or more
 * @param wattHoursPerTrial energy of a trial, Wh, 0 or more
 */
public record StudyCost(double trialSeconds, SessionCost baseline, List<SessionCost> against, double travelSecondsPerOuting,
        double outdoorWeight, double wattHoursOpening, double wattHoursPerTrial) {
    /** Copies; refuses what is out of range. */
    public StudyCost {
        against = List.copyOf(against);
        if (against.isEmpty()) {
            throw new IllegalArgumentException("no changed level has a cost");
        }
        require("trialSeconds", trialSeconds, Double.MIN_NORMAL);
        require("travelSecondsPerOuting", travelSecondsPerOuting, 0);
        require("outdoorWeight", outdoorWeight, 1);
        require("wattHoursOpening", wattHoursOpening, 0);
        require("wattHoursPerTrial", wattHoursPerTrial, 0);
    }

    /** The costs where one level is changed. */
    public StudyCost(double trialSeconds, SessionCost baseline, SessionCost against, double travelSecondsPerOuting, double outdoorWeight,
            double wattHoursOpening, double wattHoursPerTrial) {
        this(trialSeconds, baseline, List.of(against), travelSecondsPerOuting, outdoorWeight, wattHoursOpening, wattHoursPerTrial);
    }

    /**
     * The costs a plan's budget states: no travel, and a second outdoors counts as one indoors.
     *
     * @throws IllegalArgumentException if the budget does not say how long a trial takes
     */
    public static StudyCost of(Budget budget, String baselineLevel, List<String> againstLevels) {
        double trial = budget.trialSeconds().orElseThrow(() -> new IllegalArgumentException("the budget has no time for a trial"));
        return new StudyCost(trial, session(budget, baselineLevel), againstLevels.stream().map(level -> session(budget, level)).toList(),
                0, 1, 0, 0);
    }

    /** The same with another weight of a second outdoors. */
    public StudyCost weighingOutdoors(double weight) {
        return new StudyCost(trialSeconds, baseline, against, travelSecondsPerOuting, weight, wattHoursOpening, wattHoursPerTrial);
    }

    /** The same with a way to go for each outing. */
    public StudyCost travelling(double secondsPerOuting) {
        return new StudyCost(trialSeconds, baseline, against, secondsPerOuting, outdoorWeight, wattHoursOpening, wattHoursPerTrial);
    }

    /** Whether anybody goes outdoors. */
    public boolean anyOutdoors() {
        return baseline.outdoors() || against.stream().anyMatch(SessionCost::outdoors);
    }

    private static SessionCost session(Budget budget, String level) {
        return new SessionCost(budget.openingSeconds(level), budget.outdoors().contains(level));
    }

    private static void require(String name, double value, double least) {
        if (!(value >= least && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(name + " " + value + " must be finite and at least " + least);
        }
    }
}
