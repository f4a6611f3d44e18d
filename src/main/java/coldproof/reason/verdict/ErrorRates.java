package coldproof.reason.verdict;

/**
 * The rates of wrong answers that one verdict may use up.
 *
 * @param change two-sided rate at which no change is called one, in (0, 0.5)
 * @param sameness rate at which each of the two one-sided tests calls a change that matters none, in (0, 0.5)
 */
record ErrorRates(double change, double sameness) {
    private static final double NOTHING = 1e-12; // a confidence level closer to 1 is no number

    /** Refuses rates out of range. */
    ErrorRates {
        if (!(change > 0 && change < 0.5 && sameness > 0 && sameness < 0.5)) {
            throw new IllegalArgumentException("error rates " + change + " and " + sameness + " are not in (0, 0.5)");
        }
    }

    /** All that the question allows. */
    static ErrorRates of(Question question) {
        return new ErrorRates(question.falseAlarm(), question.falseAlarm());
    }

    /** Rates of one look; what rounds to nothing is so small that no result reaches it. */
    static ErrorRates atLook(double change, double sameness) {
        return new ErrorRates(Math.max(change, NOTHING), Math.max(sameness, NOTHING));
    }

    /** The share of each of several comparisons. */
    ErrorRates sharedBy(int comparisons) {
        return new ErrorRates(change / comparisons, sameness / comparisons);
    }
}
