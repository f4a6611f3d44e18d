package coldproof.reason.limiter;

import coldproof.quantity.Interval;
import coldproof.stats.distribution.StudentT;
import coldproof.stats.interval.Moments;
import coldproof.stats.model.Estimate;
import coldproof.stats.model.TwoGroups;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * The change of one quantity from one condition to another, tested in the stratum in which the change was made: within sessions where
 * sessions hold both conditions, else between session means. One session each gives an estimate without an interval.
 *
 * @param estimate mean difference; NaN when the quantity was not measured
 * @param error its standard error; NaN where the trials give no noise
 * @param degreesOfFreedom of that error; 0 where there is none
 * @param interval90 for 'stayed'; empty where the trials give no noise
 * @param interval95 for 'moved'
 */
record Effect(double estimate, double error, double degreesOfFreedom, Optional<Interval> interval90, Optional<Interval> interval95) {
    private static final double STAYED = 0.90;
    private static final double MOVED = 0.95;
    private static final Effect NONE = bare(Double.NaN);

    static Effect of(List<LimiterTrial> from, List<LimiterTrial> to, ToDoubleFunction<LimiterTrial> quantity) {
        Map<String, List<Double>> before = bySession(from, quantity);
        Map<String, List<Double>> after = bySession(to, quantity);
        if (before.isEmpty() || after.isEmpty()) {
            return NONE;
        }
        List<String> shared = before.keySet().stream().filter(after::containsKey).toList();
        if (shared.size() >= 2) {
            Moments differences = Moments.of(shared.stream().mapToDouble(session -> mean(after.get(session)) - mean(before.get(session))).toArray());
            return around(differences.mean(), differences.standardError(), differences.count() - 1);
        }
        if (shared.size() == 1) {
            return welch(array(before.get(shared.get(0))), array(after.get(shared.get(0))));
        }
        return welch(before.values().stream().mapToDouble(Effect::mean).toArray(), after.values().stream().mapToDouble(Effect::mean).toArray());
    }

    private static Map<String, List<Double>> bySession(List<LimiterTrial> trials, ToDoubleFunction<LimiterTrial> quantity) {
        Map<String, List<Double>> sessions = new LinkedHashMap<>();
        for (LimiterTrial trial : trials) {
            double value = quantity.applyAsDouble(trial);
            if (Double.isFinite(value)) {
                sessions.computeIfAbsent(trial.session(), name -> new ArrayList<>()).add(value);
            }
        }
        return sessions;
    }

    private static Effect welch(double[] from, double[] to) {
        if (from.length < 2 || to.length < 2) {
            return bare(Moments.of(to).mean() - Moments.of(from).mean());
        }
        Estimate difference = TwoGroups.welch(from, to);
        return around(difference.logDifference(), difference.standardError(), difference.degreesOfFreedom());
    }

    private static Effect bare(double estimate) {
        return new Effect(estimate, Double.NaN, 0, Optional.empty(), Optional.empty());
    }

    private static Effect around(double center, double error, double df) {
        return new Effect(center, error, df, Optional.of(interval(center, error, df, STAYED)), Optional.of(interval(center, error, df, MOVED)));
    }

    private static Interval interval(double center, double error, double df, double level) {
        double half = error * StudentT.upperPoint((1 - level) / 2, df);
        return new Interval(level, center - half, center + half);
    }

    private static double mean(List<Double> values) {
        return Moments.of(array(values)).mean();
    }

    private static double[] array(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
