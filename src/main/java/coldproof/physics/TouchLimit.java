package coldproof.physics;

import coldproof.quantity.Celsius;
import java.util.OptionalDouble;

/** When a hot or cold surface hurts the hand that touches it. */
public final class TouchLimit {
    /** Bare hands should not be in contact with metal colder than this (Chen, Nilsson and Holmér 1994, abstract), °C. */
    public static final double COLD_METAL_BARE_HANDS = 4;
    /** No bare grip on metal below this: 19 °F, site safety plans after ACGIH, °C. */
    public static final double COLD_METAL_NO_BARE_GRIP = -7;
    /** Skin-to-metal contact temperatures at which pain, numbness and frostbite begin (Geng et al. 2006, basis of ISO 13732-3), °C. */
    public static final double CONTACT_PAIN = 15;
    /** See {@link #CONTACT_PAIN}. */
    public static final double CONTACT_NUMBNESS = 7;
    /** See {@link #CONTACT_PAIN}. */
    public static final double CONTACT_FROSTBITE = 0;

    /** What the hand meets. */
    public enum Material {
        /** Bare metal. */
        METAL(60, 51, 70, new double[] {49, 52, 55, 57, 60, 66, 68}),
        /** Glass, glazed ceramic. */
        GLASS(71, 56, 85, new double[] {59, 62, 65, 67, 70, 76, 78}),
        /** Plastic, rubber. */
        PLASTIC(77, 60, 94, new double[] {74, 77, 80, 82, 85, 91, 93});

        private final double upToTenSeconds;
        private final double upToAMinute;
        private final double underASecond;
        private final double[] burns;

        Material(double upToTenSeconds, double upToAMinute, double underASecond, double[] burns) {
            this.upToTenSeconds = upToTenSeconds;
            this.upToAMinute = upToAMinute;
            this.underASecond = underASecond;
            this.burns = burns;
        }
    }

    /** Contact times of the burn list, s: longest first; the first row is "more than 5 min". */
    private static final double[] BURN_SECONDS = {300, 90, 30, 10, 5, 1.5, 1};

    private TouchLimit() {}

    /**
     * Warmest surface that equipment may offer for a touch of this length (IEC 62368-1 Table 38, TS1, at 25 °C ambient, not re-scaled; the
     * 77 °C of plastic was seen, the other cells are from memory).
     *
     * @param seconds how long it is held, above 0
     */
    public static Celsius warmest(Material material, double seconds) {
        Bounds.positive("contact time", seconds, "s");
        if (seconds < 1) {
            return new Celsius(material.underASecond);
        }
        if (seconds <= 10) {
            return new Celsius(material.upToTenSeconds);
        }
        return new Celsius(seconds < 60 ? material.upToAMinute : 48);
    }

    /**
     * Seconds of contact after which a surface burns, from a published list of a burns institute; rows between are taken at the next hotter
     * row's shorter time. Empty below the coolest row. 300 stands for "more than 5 min", 1 also for anything hotter.
     */
    public static OptionalDouble secondsToBurn(Material material, Celsius surface) {
        double t = surface.degrees();
        if (t < material.burns[0]) {
            return OptionalDouble.empty();
        }
        for (int i = 0; i < BURN_SECONDS.length; i++) {
            if (t <= material.burns[i]) {
                return OptionalDouble.of(BURN_SECONDS[i]);
            }
        }
        return OptionalDouble.of(BURN_SECONDS[BURN_SECONDS.length - 1]);
    }
}
