package coldproof.physics;

import coldproof.quantity.Celsius;

/**
 * Energy that a battery gives for planned trials, with what the cold takes away.
 *
 * @param fullWattHours energy of the full pack as it is now (aged), not as designed, above 0
 * @param startShare state of charge at the start, in (0, 1]
 * @param endShare state of charge at which to stop, in [0, startShare); below about 0.3 firmware may cap the power
 * @param cell cell temperature, in [-40, 60] °C
 * @param reserve share kept back, in [0, 1)
 */
public record BatteryBudget(double fullWattHours, double startShare, double endShare, Celsius cell, double reserve) {
    /** State of charge at which to stop outdoors (our judgement). */
    public static final double USUAL_END_SHARE = 0.3;
    /** Share kept back (our judgement). */
    public static final double USUAL_RESERVE = 0.2;

    /** Refuses what is out of range. */
    public BatteryBudget {
        Bounds.positive("full energy", fullWattHours, "Wh");
        Bounds.within("start state of charge", startShare, Double.MIN_VALUE, 1, "(share)");
        Bounds.within("end state of charge", endShare, 0, Math.nextDown(startShare), "(share)");
        Bounds.within("cell temperature", cell.degrees(), -40, 60, "°C");
        Bounds.within("reserve", reserve, 0, Math.nextDown(1.0), "(share)");
    }

    /**
     * Share of the rated energy that a cold cell gives: a straight line through the published pair "100 % at 27 °C, typically 50 % at -18
     * °C", {@code clamp(0.5 + 0.5 (T + 18) / 45, 0.3, 1)}. The line between is our judgement and on the pessimistic side; good cells give
     * more. The loss comes back on warming.
     */
    public static double coldShare(Celsius cell) {
        double share = 0.5 + 0.5 * (cell.degrees() + 18) / 45;
        return Math.max(0.3, Math.min(1, share));
    }

    /** Energy at hand in Wh: {@code full (start - end) coldShare (1 - reserve)}. */
    public double availableWattHours() {
        return availableWattHours(coldShare(cell));
    }

    /** Energy at hand in Wh with a measured share in (0, 1] instead of {@link #coldShare}. */
    public double availableWattHours(double measuredShare) {
        Bounds.within("share given in the cold", measuredShare, Double.MIN_VALUE, 1, "(share)");
        return fullWattHours * (startShare - endShare) * measuredShare * (1 - reserve);
    }

    /** Seconds of a steady draw in W that the energy at hand lasts. */
    public double seconds(double watts) {
        return availableWattHours() * 3600 / Bounds.positive("power", watts, "W");
    }

    /** Whole trials that the energy at hand lasts, each with the idle time that goes with it. */
    public int trials(double trialWatts, double trialSeconds, double idleWatts, double idleSeconds) {
        double each = wattHours(trialWatts, trialSeconds, idleWatts, idleSeconds);
        return (int) Math.min(Integer.MAX_VALUE, Math.floor(availableWattHours() / each));
    }

    /** Energy of one trial with the idle time that goes with it, in Wh. */
    public static double wattHours(double trialWatts, double trialSeconds, double idleWatts, double idleSeconds) {
        Bounds.positive("power in a trial", trialWatts, "W");
        Bounds.positive("trial length", trialSeconds, "s");
        Bounds.within("idle power", idleWatts, 0, 1e6, "W");
        Bounds.within("idle time", idleSeconds, 0, 1e9, "s");
        return (trialWatts * trialSeconds + idleWatts * idleSeconds) / 3600;
    }
}
