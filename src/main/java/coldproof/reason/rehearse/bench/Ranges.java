package coldproof.reason.rehearse.bench;

/** Refuses a parameter that is out of its range; so written that NaN fails. */
final class Ranges {
    private Ranges() {
    }

    static void above(String name, double value, double low) {
        if (!(value > low && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(name + " " + value + " must be finite and above " + low);
        }
    }

    static void atLeast(String name, double value, double low) {
        if (!(value >= low && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(name + " " + value + " must be finite and at least " + low);
        }
    }

    static void within(String name, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException(name + " " + value + " is outside [" + low + ", " + high + "]");
        }
    }
}
