package coldproof.reason.looks;

import coldproof.plan.Change;
import coldproof.plan.Factor;
import coldproof.plan.Plan;
import java.util.List;

/** What the verdict will take out of the trials of a plan before it looks at their noise. */
public final class PlannedEffects {
    private PlannedEffects() {}

    /**
     * How many effects vary inside sessions: those of the compared factor and of every other factor set per trial; and, as long as at least half of
     * the degrees of freedom are left, the interactions of all factors two by two, or at least those of the compared one.
     *
     * @param comparedLevels levels of the compared factor that are judged together, 2 or more
     * @param left degrees of freedom of the trials when those of the sessions are taken out
     */
    public static int withinSessions(Plan plan, int comparedLevels, int left) {
        List<Factor> others = plan.factors().stream().filter(factor -> !factor.name().equals(plan.compare().factor())).toList();
        int plain = comparedLevels - 1;
        int ofCompared = 0;
        int ofOthers = 0;
        for (int i = 0; i < others.size(); i++) {
            int more = others.get(i).levels().size() - 1;
            plain += others.get(i).change() == Change.PER_TRIAL ? more : 0;
            ofCompared += (comparedLevels - 1) * more;
            for (Factor another : others.subList(0, i)) {
                boolean inSessions = another.change() == Change.PER_TRIAL || others.get(i).change() == Change.PER_TRIAL;
                ofOthers += inSessions ? more * (another.levels().size() - 1) : 0;
            }
        }
        for (int richer : new int[] {plain + ofCompared + ofOthers, plain + ofCompared}) {
            if (2 * (left - richer) >= left - plain) {
                return richer;
            }
        }
        return plain;
    }
}
