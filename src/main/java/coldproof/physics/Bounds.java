package coldproof.physics;

/** Range checks with one wording; so written that NaN fails. */
final class Bounds {
    private Bounds() {}

    /** The value, if it lies in [low, high]. */
    static double within(String name, double value, double low, double high, String unit) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException(name + " " + value + " " + unit + " is outside [" + low + ", " + high + "] " + unit);
        }
        return value;
    }

    /** The value, if it is finite and above zero. */
    static double positive(String name, double value, String unit) {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(name + " " + value + " " + unit + " must be above 0 " + unit);
        }
        return value;
    }
}
