package coldproof.study;

/**
 * The study left its frozen plan; named in every verdict and report.
 *
 * @param text what was different, for people
 * @param code a fixed word for programs, such as {@code soak-too-short}
 */
public record DeviationNoted(String text, String code) implements Event {
    /** Refuses blank words. */
    public DeviationNoted {
        Values.word("text", text);
        Values.word("code", code);
    }

    @Override
    public EventKind kind() {
        return EventKind.DEVIATION_NOTED;
    }
}
