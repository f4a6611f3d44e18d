package coldproof.reason.rehearse.bench;

/**
 * What is run. The rate goes with the clock as {@code rateAtHighest (f/f1)^rateExponent} until something outside the processor caps it.
 *
 * @param workSeconds length of the work in one trial, s, at least 20
 * @param loops how many loops the work is cut into, 1 or more
 * @param leadSeconds idle seconds logged before the work, s, 0 or more
 * @param tailSeconds idle seconds logged after it, s, 0 or more
 * @param rateAtHighest rate at the highest clock, in the metric's unit, above 0
 * @param rateExponent exponent of the clock, in [0, 1]; 1 where only the processor counts
 * @param rateCapShare share of {@code rateAtHighest} the rate cannot exceed, in (0, 1]; 1 for none
 * @param bound what the processor does while the cap holds
 * @param activity dynamic power of this work as a share of the heaviest, in (0, 1.5]
 * @param activitySwing slow swing of the activity over a loop, as a share, in [0, 0.5]
 */
public record Workload(double workSeconds, int loops, double leadSeconds, double tailSeconds, double rateAtHighest, double rateExponent,
        double rateCapShare, Bound bound, double activity, double activitySwing) {
    /** What the processor does while the workload's own cap holds. */
    public enum Bound {
        /** It waits, as for a drive: utilisation and power fall. */
        WAITS,
        /** It stalls, as for memory: utilisation still reads full and power stays. */
        STALLS
    }

    /** Refuses what is out of range. */
    public Workload {
        Ranges.atLeast("workSeconds", workSeconds, 20);
        Ranges.within("loops", loops, 1, workSeconds);
        Ranges.atLeast("leadSeconds", leadSeconds, 0);
        Ranges.atLeast("tailSeconds", tailSeconds, 0);
        Ranges.above("rateAtHighest", rateAtHighest, 0);
        Ranges.within("rateExponent", rateExponent, 0, 1);
        Ranges.within("rateCapShare", rateCapShare, Double.MIN_NORMAL, 1);
        Ranges.within("activity", activity, Double.MIN_NORMAL, 1.5);
        Ranges.within("activitySwing", activitySwing, 0, 0.5);
    }
}
