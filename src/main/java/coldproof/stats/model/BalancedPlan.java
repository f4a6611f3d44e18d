package coldproof.stats.model;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Checks that a plan is balanced, which is what the closed-form analysis rests on. */
final class BalancedPlan {
    private BalancedPlan() {}

    /** Refuses a plan whose cells are not all filled equally often, naming the first that is not. */
    static void require(int trials, int[] session, int[] block, List<Strata.Factor> factors) {
        if (factors.isEmpty()) {
            throw new IllegalArgumentException("no factor to analyse");
        }
        requireLength("sessions", session.length, trials);
        requireLength("blocks", block.length, trials);
        Map<Integer, Integer> wholeOfSession = new HashMap<>();
        Map<Integer, Integer> blockOfSession = new HashMap<>();
        Map<List<Integer>, Integer> trialsOfCell = new HashMap<>();
        int wholeCells = 1;
        int partCells = 1;
        for (Strata.Factor factor : factors) {
            requireLength("levels of " + factor.name(), factor.level().length, trials);
            wholeCells *= factor.perSession() ? factor.levels() : 1;
            partCells *= factor.perSession() ? 1 : factor.levels();
        }
        int[] whole = cells(trials, factors, true);
        int[] part = cells(trials, factors, false);
        for (int i = 0; i < trials; i++) {
            requireIndex("session", session[i], trials);
            requireIndex("block", block[i], trials);
            Integer known = wholeOfSession.putIfAbsent(session[i], whole[i]);
            if (known != null && known != whole[i]) {
                throw new IllegalArgumentException("a per-session factor changes inside session " + session[i]);
            }
            Integer knownBlock = blockOfSession.putIfAbsent(session[i], block[i]);
            if (knownBlock != null && knownBlock != block[i]) {
                throw new IllegalArgumentException("session " + session[i] + " lies in two blocks");
            }
            trialsOfCell.merge(List.of(session[i], part[i]), 1, Integer::sum);
        }
        Map<List<Integer>, Integer> sessionsOfCell = new HashMap<>();
        wholeOfSession.forEach((each, cell) -> sessionsOfCell.merge(List.of(blockOfSession.get(each), cell), 1, Integer::sum));
        requireEqual(trialsOfCell, wholeOfSession.size() * partCells, "trials of every condition in every session");
        int blocks = (int) blockOfSession.values().stream().distinct().count();
        requireEqual(sessionsOfCell, blocks * wholeCells, "sessions of every condition in every block");
    }

    private static int[] cells(int trials, List<Strata.Factor> factors, boolean perSession) {
        int[] cell = new int[trials];
        for (Strata.Factor factor : factors) {
            if (factor.perSession() == perSession) {
                int[] level = factor.level();
                for (int i = 0; i < trials; i++) {
                    cell[i] = cell[i] * factor.levels() + level[i];
                }
            }
        }
        return cell;
    }

    private static void requireLength(String what, int length, int trials) {
        if (length != trials) {
            throw new IllegalArgumentException(length + " " + what + " for " + trials + " trials");
        }
    }

    private static void requireIndex(String what, int index, int trials) {
        if (index < 0 || index >= trials) {
            throw new IllegalArgumentException(what + " index " + index + " is outside [0, " + trials + ")");
        }
    }

    private static void requireEqual(Map<List<Integer>, Integer> counts, int cells, String what) {
        if (counts.size() != cells || counts.values().stream().distinct().count() != 1) {
            throw new IllegalArgumentException("the plan is not balanced: it lacks equal numbers of " + what + "; use the mixed model");
        }
    }
}
