package coldproof.reason.rehearse.bench;

/**
 * A fan and its automatic curve: speed rises in a straight line from the lowest, when the die is at {@code fromCelsius}, to
 * {@code automaticShare} of the highest, at {@code fullCelsius}.
 *
 * @param lowestRpm speed at idle, 1/min, 0 or more
 * @param highestRpm speed when pinned to maximum, 1/min, above the lowest
 * @param automaticShare share of the highest speed that the automatic curve will reach, in (0, 1]
 * @param fromCelsius die temperature at which the curve begins, °C
 * @param fullCelsius die temperature at which it ends, °C, above the beginning
 * @param responseSeconds time constant with which the fan follows, s, at least 0.5
 * @param wattsAtHighest system power the fan takes at its highest speed, W; goes with the cube of the speed
 */
public record Fan(double lowestRpm, double highestRpm, double automaticShare, double fromCelsius, double fullCelsius,
        double responseSeconds, double wattsAtHighest) {
    /** How the fan is driven. */
    public enum Setting {
        /** By its curve. */
        AUTOMATIC,
        /** Pinned to its highest speed. */
        MAXIMUM
    }

    /** Refuses what is out of range. */
    public Fan {
        Ranges.atLeast("lowestRpm", lowestRpm, 0);
        Ranges.above("highestRpm", highestRpm, lowestRpm);
        Ranges.within("automaticShare", automaticShare, lowestRpm / highestRpm, 1);
        Ranges.within("fromCelsius", fromCelsius, -50, 150);
        Ranges.above("fullCelsius", fullCelsius, fromCelsius);
        Ranges.atLeast("responseSeconds", responseSeconds, 0.5);
        Ranges.atLeast("wattsAtHighest", wattsAtHighest, 0);
    }

    /** The share of the highest speed that is asked for at this die temperature. */
    double targetShare(Setting setting, double dieCelsius) {
        if (setting == Setting.MAXIMUM) {
            return 1;
        }
        double lowest = lowestRpm / highestRpm;
        double along = Math.min(1, Math.max(0, (dieCelsius - fromCelsius) / (fullCelsius - fromCelsius)));
        return lowest + along * (automaticShare - lowest);
    }
}
