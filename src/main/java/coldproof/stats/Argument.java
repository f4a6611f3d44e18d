package coldproof.stats;

/** Checks of numbers handed to a formula. Every refusal names the argument, its value and the range; NaN lies in no range. */
public final class Argument {
    private Argument() {}

    /**
     * Returns a value that lies strictly between two bounds.
     *
     * @throws IllegalArgumentException if it does not, or is NaN
     */
    public static double between(String name, double value, double low, double high) {
        if (!(value > low && value < high)) {
            throw new IllegalArgumentException(name + " " + value + " is outside (" + low + ", " + high + ")");
        }
        return value;
    }

    /**
     * Returns a value from the closed range.
     *
     * @throws IllegalArgumentException if it lies outside, or is NaN
     */
    public static double within(String name, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException(name + " " + value + " is outside [" + low + ", " + high + "]");
        }
        return value;
    }

    /**
     * Returns a positive, finite value.
     *
     * @throws IllegalArgumentException if it is 0 or less, infinite or NaN
     */
    public static double positive(String name, double value) {
        return between(name, value, 0, Double.POSITIVE_INFINITY);
    }

    /**
     * Returns a finite value of either sign.
     *
     * @throws IllegalArgumentException if it is infinite or NaN
     */
    public static double finite(String name, double value) {
        return between(name, value, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    /**
     * Returns any number.
     *
     * @throws IllegalArgumentException if it is NaN
     */
    public static double number(String name, double value) {
        return within(name, value, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    /**
     * Returns degrees of freedom above 0; positive infinity stands for a known variance.
     *
     * @throws IllegalArgumentException if they are 0 or less, or NaN
     */
    public static double degreesOfFreedom(double degreesOfFreedom) {
        if (!(degreesOfFreedom > 0)) {
            throw new IllegalArgumentException("degrees of freedom " + degreesOfFreedom + " are outside (0, Infinity]");
        }
        return degreesOfFreedom;
    }

    /**
     * Returns a count of at least {@code smallest}.
     *
     * @throws IllegalArgumentException if it is smaller
     */
    public static int atLeast(String name, int value, int smallest) {
        if (value < smallest) {
            throw new IllegalArgumentException(name + " " + value + " is below " + smallest);
        }
        return value;
    }
}
