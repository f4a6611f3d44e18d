package coldproof.reason.looks;

import coldproof.plan.Change;
import coldproof.plan.Factor;
import coldproof.plan.Plan;

/** What the verdict will take out of the trials of a plan before it looks at their noise. */
public final class PlannedEffects {
    private PlannedEffects() {}

    /**
     * How many effects vary inside sessions: those of the compared factor, of every other factor set per trial, and the interaction of the compared
     * factor with each other one.
     *
     * @param comparedLevels levels of the compared factor that are judged together, 2 or more
     */
    public static int withinSessions(Plan plan, int comparedLevels) {
        int effects = comparedLevels - 1;
        for (Factor other : plan.factors()) {
            int more = other.levels().size() - 1;
            if (!other.name().equals(plan.compare().factor())) {
                effects += (comparedLevels - 1) * more + (other.change() == Change.PER_TRIAL ? more : 0);
            }
        }
        return effects;
    }
}
