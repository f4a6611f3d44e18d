package coldproof.reason.verdict;

/** What is still needed to settle an undecided question. */
final class Shortfall {
    private Shortfall() {}

    static MoreNeeded of(Question question, Stratum stratum, Arrangement arrangement, Analysis analysis) {
        return MoreNeeded.NOTHING;
    }
}
