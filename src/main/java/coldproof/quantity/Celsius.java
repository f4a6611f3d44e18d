package coldproof.quantity;

/**
 * An air, surface, cell or die temperature. Immutable. Differences are {@link Kelvins}, so that two temperatures are never added.
 *
 * @param degrees temperature in °C, in [-273.15, 10000)
 */
public record Celsius(double degrees) implements Comparable<Celsius> {
    private static final double ABSOLUTE_ZERO = -273.15; // °C, by definition of the scale

    /** Refuses what no thermometer can show, NaN included. */
    public Celsius {
        if (!(degrees >= ABSOLUTE_ZERO && degrees < 10_000)) {
            throw new IllegalArgumentException("temperature " + degrees + " °C is outside [-273.15, 10000) °C");
        }
    }

    /** The same temperature read in °F. */
    public static Celsius ofFahrenheit(double fahrenheit) {
        return new Celsius((fahrenheit - 32) / 1.8);
    }

    /** The same temperature read in K. */
    public static Celsius ofKelvin(double kelvin) {
        return new Celsius(kelvin + ABSOLUTE_ZERO);
    }

    /** This temperature in K. */
    public double kelvin() {
        return degrees - ABSOLUTE_ZERO;
    }

    /** How far this temperature lies above the other; negative when below. */
    public Kelvins above(Celsius other) {
        return new Kelvins(degrees - other.degrees);
    }

    /** This temperature raised by a difference. */
    public Celsius plus(Kelvins difference) {
        return new Celsius(degrees + difference.difference());
    }

    @Override
    public int compareTo(Celsius other) {
        return Double.compare(degrees, other.degrees);
    }
}
