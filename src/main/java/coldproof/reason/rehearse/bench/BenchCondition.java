package coldproof.reason.rehearse.bench;

/**
 * The setting under which a trial is run.
 *
 * @param airCelsius planned air at the inlet, °C, in [-60, 60]
 * @param outdoors whether the air is that of the day, or a room's
 * @param fan how the fan is driven
 * @param source where the power comes from
 * @param pasteScale resistance of die to sink against the device's own, in [0.2, 5]; 1 for unchanged
 */
public record BenchCondition(double airCelsius, boolean outdoors, Fan.Setting fan, Supply.Source source, double pasteScale) {
    /** Refuses what is out of range. */
    public BenchCondition {
        Ranges.within("airCelsius", airCelsius, -60, 60);
        Ranges.within("pasteScale", pasteScale, 0.2, 5);
    }

    /** A room, fan by its curve, wall power, paste as it is. */
    public static BenchCondition room(double airCelsius) {
        return new BenchCondition(airCelsius, false, Fan.Setting.AUTOMATIC, Supply.Source.WALL, 1);
    }

    /** Outdoors, fan by its curve, wall power, paste as it is. */
    public static BenchCondition outdoors(double airCelsius) {
        return new BenchCondition(airCelsius, true, Fan.Setting.AUTOMATIC, Supply.Source.WALL, 1);
    }

    /** The same with the fan driven otherwise. */
    public BenchCondition with(Fan.Setting other) {
        return new BenchCondition(airCelsius, outdoors, other, source, pasteScale);
    }

    /** The same on another source. */
    public BenchCondition with(Supply.Source other) {
        return new BenchCondition(airCelsius, outdoors, fan, other, pasteScale);
    }

    /** The same with other paste. */
    public BenchCondition withPaste(double scale) {
        return new BenchCondition(airCelsius, outdoors, fan, source, scale);
    }
}
