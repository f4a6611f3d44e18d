package coldproof.physics;

import java.util.Arrays;
import java.util.Optional;

/**
 * Kinds of devices with the time constant typical of each, until one is measured.
 *
 * <p>From {@code tau = m c / (U A)} with c = 900 J/(kg K) (open cell parameter files give 913 and 999 for the cell, a metal case has
 * about 900): low: bare on a table, half of the surface at 10 W/(m² K) (still air, common practice); likely: in a sealed bag, all of the
 * surface at 4 W/(m² K) (common practice); high: twice that, because a case is not one lump (air gaps between battery and lid; our
 * judgement).
 */
public enum DeviceClass {
    /** A telephone or handheld: 0.2 kg, 0.023 m². */
    HANDHELD("handheld", 0.2, 0.023),
    /** A tablet: 0.6 kg, 0.085 m². */
    TABLET("tablet", 0.6, 0.085),
    /** A portable computer: 2.0 kg, 0.17 m² (both faces). */
    LAPTOP("laptop", 2.0, 0.17),
    /** A small desktop without a screen: 1.5 kg, 0.08 m². */
    SMALL_DESKTOP("small desktop", 1.5, 0.08),
    /** A tower: 9 kg, 0.75 m². */
    TOWER("tower", 9, 0.75),
    /** A bare drive: 0.7 kg, 0.035 m². */
    DRIVE("drive", 0.7, 0.035);

    private static final double SPECIFIC_HEAT = 900; // J/(kg K)
    private static final double BARE = 10; // W/(m² K)
    private static final double BAGGED = 4; // W/(m² K)

    private final String word;
    private final double kilograms;
    private final double squareMetres;

    DeviceClass(String word, double kilograms, double squareMetres) {
        this.word = word;
        this.kilograms = kilograms;
        this.squareMetres = squareMetres;
    }

    /** The word a person writes. */
    public String word() {
        return word;
    }

    /** The class of a word. */
    public static Optional<DeviceClass> of(String word) {
        return Arrays.stream(values()).filter(one -> one.word.equals(word)).findFirst();
    }

    /** Its typical time constant when brought into a room in a bag. */
    public TimeConstant timeConstant() {
        double heatCapacity = kilograms * SPECIFIC_HEAT;
        double bagged = LumpedBody.timeConstantSeconds(heatCapacity, BAGGED, squareMetres);
        double table = LumpedBody.timeConstantSeconds(heatCapacity, BARE, squareMetres / 2);
        return new TimeConstant(table, bagged, 2 * bagged, false);
    }
}
