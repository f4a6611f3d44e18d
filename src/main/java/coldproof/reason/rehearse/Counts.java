package coldproof.reason.rehearse;

import coldproof.reason.verdict.Decision;
import coldproof.reason.verdict.ManyLooks;
import coldproof.reason.verdict.Word;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * How rehearsed studies ended.
 *
 * @param studies how many were rehearsed
 * @param decisions how many ended with each decision
 * @param words how many ended with each word
 * @param same how many ended with sameness shown, whatever their word
 * @param wrong how many ended with a decision that contradicts the story
 * @param endedAt how many ended at each look, the last at the end of the plan
 */
public record Counts(long studies, Map<Decision, Long> decisions, Map<Word, Long> words, long same, long wrong, List<Long> endedAt) {
    /** Copies. */
    public Counts {
        decisions = Map.copyOf(decisions);
        words = Map.copyOf(words);
        endedAt = List.copyOf(endedAt);
    }

    /** Share of studies with this decision, in [0, 1]. */
    public double share(Decision decision) {
        return (double) decisions.getOrDefault(decision, 0L) / studies;
    }

    /** Share of studies whose decision contradicts the story, in [0, 1]. */
    public double wrongShare() {
        return (double) wrong / studies;
    }

    /** Share of studies that saw a change, whichever way: the words whose interval leaves out 0. */
    public double changeSeen() {
        long seen = 0;
        for (Word word : new Word[] {Word.GAIN, Word.TRIFLING_GAIN, Word.LOSS, Word.TRIFLING_LOSS}) {
            seen += words.getOrDefault(word, 0L);
        }
        return (double) seen / studies;
    }

    /**
     * Share of studies in which both one-sided tests show the change to be smaller than what matters, in [0, 1]. A few of them are called a gain or
     * a loss all the same, because the interval of the change leaves out 0 and reaches beyond what matters.
     */
    public double samenessShown() {
        return (double) same / studies;
    }

    /** Half width of a 95 % interval of a share, from the binomial deviation of so many studies. */
    public double error(double share) {
        return 1.96 * Math.sqrt(share * (1 - share) / studies);
    }

    /** Counts being made. Not thread-safe. */
    static final class Tally {
        private final long[] decisions = new long[Decision.values().length];
        private final long[] words = new long[Word.values().length];
        private final long[] endedAt;
        private long same;
        private long wrong;

        Tally(int looks) {
            endedAt = new long[looks];
        }

        void add(ManyLooks.Ended ended, boolean isWrong) {
            decisions[ended.decision().ordinal()]++;
            words[ended.word().ordinal()]++;
            same += ended.sameness() ? 1 : 0;
            wrong += isWrong ? 1 : 0;
            endedAt[ended.look()]++;
        }

        void add(Tally other) {
            add(decisions, other.decisions);
            add(words, other.words);
            add(endedAt, other.endedAt);
            same += other.same;
            wrong += other.wrong;
        }

        private static void add(long[] to, long[] from) {
            for (int i = 0; i < to.length; i++) {
                to[i] += from[i];
            }
        }

        Counts counts() {
            Map<Decision, Long> byDecision = new EnumMap<>(Decision.class);
            for (Decision decision : Decision.values()) {
                byDecision.put(decision, decisions[decision.ordinal()]);
            }
            Map<Word, Long> byWord = new EnumMap<>(Word.class);
            for (Word word : Word.values()) {
                byWord.put(word, words[word.ordinal()]);
            }
            long studies = Arrays.stream(decisions).sum();
            return new Counts(studies, byDecision, byWord, same, wrong, Arrays.stream(endedAt).boxed().toList());
        }
    }
}
