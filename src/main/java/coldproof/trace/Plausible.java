package coldproof.trace;

/**
 * What a sensor of a channel can show at all; anything else is a word for "no value" in numbers, such as -999 or 65535.
 *
 * @param low in the unit used inside
 * @param high in the unit used inside
 * @param text for a message
 */
record Plausible(double low, double high, String text) {
    private static final Plausible TEMPERATURE = new Plausible(-70, 150, "-70 to 150 °C");
    private static final Plausible POWER = new Plausible(0, 3000, "0 to 3000 W");
    private static final Plausible CLOCK = new Plausible(1, 12_000, "1 to 12000 MHz");
    private static final Plausible FAN = new Plausible(0, 40_000, "0 to 40000 rpm");
    private static final Plausible SHARE = new Plausible(0, 101, "0 to 100 %");
    private static final Plausible TIME = new Plausible(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, "any time");

    static Plausible of(Channel channel) {
        return switch (channel.kind()) {
            case TEMPERATURE -> TEMPERATURE;
            case POWER -> POWER;
            case CLOCK -> CLOCK;
            case ROTATION -> FAN;
            case SHARE -> SHARE;
            case TIME -> TIME;
        };
    }
}
