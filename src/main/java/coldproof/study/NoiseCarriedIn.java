package coldproof.study;

/**
 * Noise known from a pilot or an earlier study, carried in with its degrees of freedom.
 *
 * @param runCvPercent run-to-run coefficient of variation, percent, 0 or more
 * @param sessionCvPercent session-to-session coefficient of variation, percent, 0 or more
 * @param runDegreesOfFreedom degrees of freedom behind the first, 0 or more
 * @param sessionDegreesOfFreedom degrees of freedom behind the second, 0 or more
 * @param from where it was found, such as {@code pilot} or the title of a study
 */
public record NoiseCarriedIn(double runCvPercent, double sessionCvPercent, double runDegreesOfFreedom, double sessionDegreesOfFreedom,
        String from) implements Event {
    /** Refuses negative or undefined amounts and a blank origin. */
    public NoiseCarriedIn {
        Values.notNegative("runCvPercent", runCvPercent);
        Values.notNegative("sessionCvPercent", sessionCvPercent);
        Values.notNegative("runDegreesOfFreedom", runDegreesOfFreedom);
        Values.notNegative("sessionDegreesOfFreedom", sessionDegreesOfFreedom);
        Values.word("from", from);
    }

    @Override
    public EventKind kind() {
        return EventKind.NOISE_CARRIED_IN;
    }
}
