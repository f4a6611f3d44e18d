package coldproof.reason.safety;

import java.util.List;
import java.util.OptionalDouble;

/** What a rule asks of one reading. */
public sealed interface Condition {
    /** The reading asked. */
    Reading reading();

    /** Whether a value of the reading meets it. */
    boolean holds(Value value);

    /** Whether every value that meets the other meets this too; false where the readings differ. */
    boolean covers(Condition other);

    /**
     * A number inside a range.
     *
     * @param reading a reading with a dimension
     * @param low lower end in the dimension's own unit; negative infinity where there is none
     * @param lowIncluded whether the lower end belongs to it
     * @param high upper end; positive infinity where there is none
     * @param highIncluded whether the upper end belongs to it
     */
    record Range(Reading reading, double low, boolean lowIncluded, double high, boolean highIncluded) implements Condition {
        /** Refuses an empty range, a range without an end and a reading that is a word. */
        public Range {
            if (reading.dimension().isEmpty()) {
                throw new IllegalArgumentException(reading.word() + " is a word, not a number");
            }
            if (!(low < high) || Double.isInfinite(low) && Double.isInfinite(high)) {
                throw new IllegalArgumentException("a range from " + low + " to " + high + " has no inside or no end");
            }
        }

        @Override
        public boolean holds(Value value) {
            double x = value.number().orElse(Double.NaN);
            return (x > low || lowIncluded && x == low) && (x < high || highIncluded && x == high);
        }

        @Override
        public boolean covers(Condition other) {
            if (!(other instanceof Range range) || range.reading != reading) {
                return false;
            }
            boolean below = low < range.low || low == range.low && (lowIncluded || !range.lowIncluded);
            boolean above = high > range.high || high == range.high && (highIncluded || !range.highIncluded);
            return below && above;
        }

        /** The lower end, where there is one. */
        public OptionalDouble lowEnd() {
            return Double.isInfinite(low) ? OptionalDouble.empty() : OptionalDouble.of(low);
        }

        /** The upper end, where there is one. */
        public OptionalDouble highEnd() {
            return Double.isInfinite(high) ? OptionalDouble.empty() : OptionalDouble.of(high);
        }
    }

    /**
     * One of some words.
     *
     * @param reading a reading that is a word
     * @param words at least one of its words
     */
    record OneOf(Reading reading, List<String> words) implements Condition {
        /** Refuses words the reading cannot be. */
        public OneOf {
            words = List.copyOf(words);
            if (words.isEmpty() || !reading.words().containsAll(words)) {
                throw new IllegalArgumentException(reading.word() + " cannot be " + words + "; it is one of " + reading.words());
            }
        }

        @Override
        public boolean holds(Value value) {
            return words.contains(value.word());
        }

        @Override
        public boolean covers(Condition other) {
            return other instanceof OneOf one && one.reading == reading && words.containsAll(one.words);
        }
    }
}
