package coldproof.reason.checklist;

import coldproof.plan.Better;
import java.util.List;

/**
 * The loops of one trial of a looped workload: one score, and how steady it was. Loops are never replicates.
 *
 * @param count how many, 2 or more
 * @param mean arithmetic mean, the score of the trial
 * @param worst the worst loop
 * @param best the best loop
 * @param steadiness the slowest loop's speed over the fastest's, in (0, 1]
 * @param driftPercent change of speed from the first loop to the last along a straight line through the logarithms, percent; above 0 is
 *     faster, whatever the metric's direction
 */
public record Loops(int count, double mean, double worst, double best, double steadiness, double driftPercent) {
    /**
     * Sums up loops.
     *
     * @param loops two or more scores above 0, in their order
     */
    public static Loops of(List<Double> loops, Better better) {
        if (loops.size() < 2 || loops.stream().anyMatch(loop -> !(loop > 0 && loop < Double.POSITIVE_INFINITY))) {
            throw new IllegalArgumentException("loops must be two or more numbers above 0, not " + loops);
        }
        double low = loops.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
        double high = loops.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
        double mean = loops.stream().mapToDouble(loop -> loop / loops.size()).sum();
        double drift = 100 * Math.expm1(better.sign() * slope(loops) * (loops.size() - 1));
        return new Loops(loops.size(), mean, better == Better.HIGHER ? low : high, better == Better.HIGHER ? high : low, low / high, drift);
    }

    /** Least-squares slope of the log score per loop. */
    private static double slope(List<Double> loops) {
        double middle = (loops.size() - 1) / 2.0;
        double cross = 0;
        double square = 0;
        for (int i = 0; i < loops.size(); i++) {
            cross += (i - middle) * Math.log(loops.get(i));
            square += (i - middle) * (i - middle);
        }
        return cross / square;
    }
}
