package coldproof.stats.model;

import coldproof.stats.DotProduct;

/**
 * The first derivative of the profiled restricted criterion over the session variance ratio alone: that of {@link ProfilePoint}, without what only
 * the best ratio needs, in buffers that are used again, one row a column of the effects so that the loops over sessions are plain. Not thread-safe.
 */
final class RatioGradient {
    private final int sessions;
    private final int columns;
    private final int residualDegrees;
    private final double[] size;
    private final double[][] within;
    /** Session means: a row for each column and, last, for the residuals. */
    private final double[][] mean;
    private final double[] weight;
    private final double[][] weighted;
    /** Cholesky's factor with the reciprocals of its diagonal. */
    private final double[][] factor;
    private final double[] solved;
    private final double[][] half;

    RatioGradient(NestedBlocks data) {
        sessions = data.sessions;
        columns = data.columns;
        residualDegrees = data.trials - data.columns;
        size = data.size;
        within = data.within;
        mean = SmallMatrix.transpose(data.mean);
        weight = new double[sessions];
        weighted = new double[columns + 1][sessions];
        factor = new double[columns][columns];
        solved = new double[columns];
        half = new double[columns][sessions];
    }

    /** The derivative at a ratio, 0 or more. */
    double at(double ratio) {
        for (int i = 0; i < sessions; i++) {
            weight[i] = size[i] / (1 + ratio * size[i]);
        }
        for (int j = 0; j <= columns; j++) {
            double[] from = mean[j];
            double[] to = weighted[j];
            for (int i = 0; i < sessions; i++) {
                to[i] = weight[i] * from[i];
            }
        }
        decompose();
        double residualSquares = within[columns][columns] + DotProduct.of(weighted[columns], mean[columns]);
        for (int j = 0; j < columns; j++) {
            double right = within[columns][j] + DotProduct.of(weighted[columns], mean[j]);
            for (int m = 0; m < j; m++) {
                right -= factor[j][m] * solved[m];
            }
            solved[j] = right * factor[j][j];
            residualSquares -= solved[j] * solved[j];
        }
        return derivative(Math.max(0, residualSquares));
    }

    private void decompose() {
        for (int j = 0; j < columns; j++) {
            double[] row = factor[j];
            for (int k = 0; k <= j; k++) {
                double sum = within[j][k] + DotProduct.of(weighted[j], mean[k]);
                for (int m = 0; m < k; m++) {
                    sum -= row[m] * factor[k][m];
                }
                row[k] = j == k ? 1 / Math.sqrt(sum) : sum * factor[k][k];
            }
        }
    }

    /** With the weighted means divided by the factor, what the effects take from the trace is their length, and from the score their sum. */
    private double derivative(double residualSquares) {
        double[] score = weighted[columns];
        double trace = 0;
        for (int i = 0; i < sessions; i++) {
            trace += weight[i];
        }
        for (int j = 0; j < columns; j++) {
            double[] here = half[j];
            System.arraycopy(weighted[j], 0, here, 0, sessions);
            for (int m = 0; m < j; m++) {
                double entry = factor[j][m];
                double[] before = half[m];
                for (int i = 0; i < sessions; i++) {
                    here[i] -= entry * before[i];
                }
            }
            double reciprocal = factor[j][j];
            double effect = solved[j];
            for (int i = 0; i < sessions; i++) {
                here[i] *= reciprocal;
                score[i] -= effect * here[i];
            }
            trace -= DotProduct.of(here, here);
        }
        return trace - residualDegrees * DotProduct.of(score, score) / residualSquares;
    }
}
