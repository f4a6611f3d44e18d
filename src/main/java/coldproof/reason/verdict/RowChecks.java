package coldproof.reason.verdict;

import coldproof.quantity.Counted;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Looks at the rows themselves: places of the run order that stand twice, pairs that are not two trials. Quiet where nothing is odd. */
final class RowChecks {
    private RowChecks() {}

    static List<Check> of(Stratum stratum, Arrangement arrangement) {
        List<Check> found = new ArrayList<>();
        samePlace(stratum, arrangement, found);
        if (stratum == Stratum.PAIRS) {
            unequalPairs(arrangement, found);
        }
        return found;
    }

    private static void samePlace(Stratum stratum, Arrangement arrangement, List<Check> found) {
        if (!arrangement.hasOrder()) {
            return;
        }
        Map<List<Object>, Integer> byPlace = new LinkedHashMap<>();
        arrangement.trials().forEach(trial -> byPlace.merge(List.of(trial.session(), stratum == Stratum.PAIRS ? trial.pair() : "", trial.order()), 1, Integer::sum));
        long repeated = byPlace.values().stream().filter(count -> count > 1).count();
        if (repeated > 0) {
            found.add(new Check("places", true, (repeated == 1 ? "One place of the run order stands" : repeated + " places of the run order stand")
                    + " at more than one trial. Either a row stands twice in the table, and counts twice: take one out; or the order begins anew in every session"
                    + " or pair: say which column holds that (--session, --pair)."));
        }
    }

    private static void unequalPairs(Arrangement arrangement, List<Check> found) {
        int whole = arrangement.wholePairs();
        int used = arrangement.inWholePairs().size();
        int alone = arrangement.trials().size() - used;
        if (alone > 0) {
            found.add(new Check("pairs", true, Counted.of(alone, "trial has", "trials have") + " no trial of the other level in the pair and cannot count: run what is"
                    + " missing, or judge without pairs."));
        }
        if (used > 2 * whole) {
            found.add(new Check("pairs", true, "Some pairs hold more than one trial of a level: the (geometric) mean of these counts as one. If the pairs are sessions, name them"
                    + " with --session instead; if a row stands twice in the table, take one out."));
        }
    }
}
