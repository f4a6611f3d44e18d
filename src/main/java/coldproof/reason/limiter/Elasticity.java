package coldproof.reason.limiter;

import coldproof.quantity.Interval;
import coldproof.stats.distribution.StudentT;
import coldproof.trace.Blocks;
import coldproof.trace.Channel;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How the rate follows the clock: change of log rate per change of log clock, 1 when it follows in full, 0 when it does not. Taken inside
 * trials from their loops where the clock falls after a boost, and between conditions from their scores.
 */
final class Elasticity {
    private static final double LEAST_CLOCK_CHANGE = 0.02; // log; smaller changes of the clock tell nothing about the slope
    private static final double LEVEL = 0.95;
    /** Below this the limiter of the clock is not the limiter of the score. */
    static final double HARDLY = 0.3;

    private Elasticity() {}

    /** What a slope means. */
    enum Answer { FOLLOWS, HARDLY_FOLLOWS, UNKNOWN }

    /** Where an interval of slopes lies. */
    static Answer answer(Optional<Interval> slope) {
        if (slope.isEmpty()) {
            return Answer.UNKNOWN;
        }
        return slope.get().high() < HARDLY ? Answer.HARDLY_FOLLOWS : slope.get().low() > HARDLY ? Answer.FOLLOWS : Answer.UNKNOWN;
    }

    /** The slope from loops inside trials; empty without loops or where the clock hardly changes. */
    static Optional<Interval> inside(List<LimiterTrial> trials) {
        List<Double> slopes = new ArrayList<>();
        List<Double> errors = new ArrayList<>();
        for (LimiterTrial trial : trials) {
            double[] slope = slope(trial);
            if (slope.length > 0) {
                slopes.add(slope[0]);
                errors.add(slope[1]);
            }
        }
        if (slopes.isEmpty()) {
            return Optional.empty();
        }
        double[] all = slopes.stream().mapToDouble(Double::doubleValue).toArray();
        if (all.length == 1) {
            double half = 2 * StudentT.upperPoint((1 - LEVEL) / 2, 5) * errors.get(0); // neighbouring loops resemble each other: twice the error, few degrees
            return Optional.of(new Interval(LEVEL, all[0] - half, all[0] + half));
        }
        return Optional.of(meanInterval(all, LEVEL));
    }

    private static double[] slope(LimiterTrial trial) {
        double[] rates = trial.loops().rates();
        double[] ends = trial.loops().endShares();
        Blocks blocks = trial.trace().blocks();
        double length = trial.trace().work().lengthSeconds();
        double[] x = new double[rates.length];
        double[] y = new double[rates.length];
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < rates.length; i++) {
            x[i] = Math.log(blocks.mean(Channel.CLOCK, (i == 0 ? 0 : ends[i - 1]) * length, ends[i] * length));
            y[i] = Math.log(rates[i]);
            if (!Double.isFinite(x[i]) || !Double.isFinite(y[i])) {
                return new double[0];
            }
            low = Math.min(low, x[i]);
            high = Math.max(high, x[i]);
        }
        return rates.length < 4 || high - low < 2 * LEAST_CLOCK_CHANGE ? new double[0] : leastSquares(x, y);
    }

    private static double[] leastSquares(double[] x, double[] y) {
        int n = x.length;
        double meanX = mean(x);
        double meanY = mean(y);
        double sxx = 0;
        double sxy = 0;
        double syy = 0;
        for (int i = 0; i < n; i++) {
            sxx += (x[i] - meanX) * (x[i] - meanX);
            sxy += (x[i] - meanX) * (y[i] - meanY);
            syy += (y[i] - meanY) * (y[i] - meanY);
        }
        double slope = sxy / sxx;
        return new double[] {slope, Math.sqrt(Math.max(0, syy - slope * sxy) / (n - 2) / sxx)};
    }

    /** The slope between two conditions; empty where the clock was not measured, hardly changes, or the score's change has no interval. */
    static Optional<Interval> between(Effect score, Effect clock) {
        if (!(Math.abs(clock.estimate()) >= LEAST_CLOCK_CHANGE) || score.interval95().isEmpty()) {
            return Optional.empty();
        }
        double a = score.interval95().get().low() / clock.estimate();
        double b = score.interval95().get().high() / clock.estimate();
        return Optional.of(new Interval(LEVEL, Math.min(a, b), Math.max(a, b)));
    }

    static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }

    /** Student's interval of a mean of two or more values. */
    static Interval meanInterval(double[] values, double level) {
        double mean = mean(values);
        double squares = 0;
        for (double value : values) {
            squares += (value - mean) * (value - mean);
        }
        int n = values.length;
        double half = StudentT.upperPoint((1 - level) / 2, n - 1) * Math.sqrt(squares / (n - 1) / n);
        return new Interval(level, mean - half, mean + half);
    }
}
