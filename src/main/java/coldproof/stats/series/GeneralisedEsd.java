package coldproof.stats.series;

import coldproof.stats.Argument;
import coldproof.stats.distribution.StudentT;
import coldproof.stats.interval.Moments;
import coldproof.stats.model.LeastSquares;
import java.util.ArrayList;
import java.util.List;

/**
 * Rosner's generalised extreme studentised deviate test: how many of up to r suspects are outliers of a normal sample, without one outlier hiding another.
 *
 * <p>{@code R_i = max |x - mean| / s} of what is left after i - 1 removals; {@code lambda_i = (n - i) t / sqrt((n - i - 1 + t^2)(n - i + 1))}, t the point of
 * n - i - 1 degrees of freedom with {@code alpha / (2 (n - i + 1))} above it; outliers are the first i values removed, i the largest with R_i above
 * lambda_i. Good from about 25 values, fair from 15.
 *
 * @param steps one for each suspect, in order of removal
 * @param outliers how many of them are outliers
 * @see "B. Rosner, Technometrics 25 (1983) 165-172; NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.3"
 */
public record GeneralisedEsd(List<Step> steps, int outliers) {
    private static final double FIXED = 1e-9; // a score that the model fits whatever it is

    /**
     * One removal.
     *
     * @param index which value, from 0
     * @param r its deviate
     * @param lambda what the deviate is compared with
     */
    public record Step(int index, double r, double lambda) {}

    /** Copies. */
    public GeneralisedEsd {
        steps = List.copyOf(steps);
    }

    /**
     * Looks for outliers.
     *
     * @param values finite; at least two more than {@code most}
     * @param most suspects, 1 or more
     * @param alpha probability of finding one where there is none, in (0, 1)
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static GeneralisedEsd of(double[] values, int most, double alpha) {
        Argument.atLeast("suspects", most, 1);
        Argument.between("alpha", alpha, 0, 1);
        int n = Argument.atLeast("number of values", values.length, most + 2);
        boolean[] removed = new boolean[n];
        List<Step> steps = new ArrayList<>();
        int outliers = 0;
        for (int i = 1; i <= most; i++) {
            double[] left = left(values, removed, n - i + 1);
            Moments moments = Moments.of(left);
            if (!(moments.sumOfSquares() > 0)) {
                break; // what is left is all equal: nothing sticks out
            }
            int farthest = farthest(values, removed, moments.mean());
            removed[farthest] = true;
            double r = Math.abs(values[farthest] - moments.mean()) / moments.standardDeviation();
            double t = StudentT.upperPoint(alpha / (2.0 * (n - i + 1)), n - i - 1.0);
            double lambda = (n - i) * t / Math.sqrt((n - i - 1 + t * t) * (n - i + 1.0));
            steps.add(new Step(farthest, r, lambda));
            if (r > lambda) {
                outliers = i;
            }
        }
        return new GeneralisedEsd(steps, outliers);
    }

    /**
     * Looks for outliers among the residuals of a linear model, which is fitted anew after each removal. The deviate is the residual in units of its own
     * standard error, {@code lambda = sqrt(f) t / sqrt(f - 1 + t^2)} with f residual degrees of freedom and t on f - 1; for a mean alone both are those
     * of {@link #of} times {@code sqrt(m / (m - 1))}, m values being left.
     *
     * @param scores finite
     * @param columns of the model, each as long as the scores
     * @param most suspects, 1 or more
     * @param alpha probability of finding one where there is none, in (0, 1)
     * @return fewer steps than {@code most} where the model runs out of degrees of freedom or fits exactly
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static GeneralisedEsd ofModel(double[] scores, double[][] columns, int most, double alpha) {
        Argument.atLeast("suspects", most, 1);
        Argument.between("alpha", alpha, 0, 1);
        boolean[] removed = new boolean[scores.length];
        List<Step> steps = new ArrayList<>();
        int outliers = 0;
        for (int i = 1; i <= most; i++) {
            int count = scores.length - i + 1;
            double[][] kept = new double[columns.length][];
            for (int j = 0; j < kept.length; j++) {
                kept[j] = left(columns[j], removed, count);
            }
            LeastSquares fit = LeastSquares.of(left(scores, removed, count), kept);
            int df = fit.degreesOfFreedom();
            if (df < 2 || fit.isExact()) {
                break;
            }
            Step step = farthest(fit, removed, alpha);
            removed[step.index()] = true;
            steps.add(step);
            if (step.r() > step.lambda()) {
                outliers = i;
            }
        }
        return new GeneralisedEsd(steps, outliers);
    }

    private static Step farthest(LeastSquares fit, boolean[] removed, double alpha) {
        double[] residuals = fit.residuals();
        double[] leverages = fit.leverages();
        double sd = Math.sqrt(fit.residualSquares() / fit.degreesOfFreedom());
        int farthest = -1;
        double largest = -1;
        int at = 0;
        for (int j = 0; j < removed.length; j++) {
            if (removed[j]) {
                continue;
            }
            double free = 1 - leverages[at];
            double r = free < FIXED ? 0 : Math.abs(residuals[at]) / (sd * Math.sqrt(free));
            if (r > largest) {
                largest = r;
                farthest = j;
            }
            at++;
        }
        int df = fit.degreesOfFreedom();
        double t = StudentT.upperPoint(alpha / (2.0 * residuals.length), df - 1.0);
        return new Step(farthest, largest, Math.sqrt(df) * t / Math.sqrt(df - 1 + t * t));
    }

    private static double[] left(double[] values, boolean[] removed, int count) {
        double[] left = new double[count];
        int at = 0;
        for (int j = 0; j < values.length; j++) {
            if (!removed[j]) {
                left[at++] = values[j];
            }
        }
        return left;
    }

    private static int farthest(double[] values, boolean[] removed, double mean) {
        int farthest = -1;
        for (int j = 0; j < values.length; j++) {
            if (!removed[j] && (farthest < 0 || Math.abs(values[j] - mean) > Math.abs(values[farthest] - mean))) {
                farthest = j;
            }
        }
        return farthest;
    }
}
