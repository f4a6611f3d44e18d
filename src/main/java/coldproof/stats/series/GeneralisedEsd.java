package coldproof.stats.series;

import coldproof.stats.Argument;
import coldproof.stats.distribution.StudentT;
import coldproof.stats.interval.Moments;
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
