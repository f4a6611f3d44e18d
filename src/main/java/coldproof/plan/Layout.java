package coldproof.plan;

import coldproof.quantity.ConstantWord;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * How the trials are arranged.
 *
 * @param kind which arrangement
 * @param counts alternating: trials by level; sessions: sessions by level of the per-session factor, or one entry with the empty name when
 *     every session has all levels; paired: one entry with the empty name, the pairs
 * @param trialsPerCondition sessions: trials of each condition in each session; otherwise 1
 * @param order how the run order is drawn
 */
public record Layout(Kind kind, Map<String, Integer> counts, int trialsPerCondition, Order order) {
    /** The arrangements there are. */
    public enum Kind {
        /** Two independent groups of trials, in one sitting or many. */
        ALTERNATING,
        /** Neighbouring trials compared two by two. */
        PAIRED,
        /** Sittings under one setting of the hard-to-change factors each. */
        SESSIONS;

        /** As written in options. */
        public String word() {
            return ConstantWord.of(this);
        }
    }

    /** Copies, keeping the order. */
    public Layout {
        counts = Collections.unmodifiableMap(new LinkedHashMap<>(counts));
    }

    /** The sum of the counts. */
    public int total() {
        return counts.values().stream().mapToInt(Integer::intValue).sum();
    }
}
