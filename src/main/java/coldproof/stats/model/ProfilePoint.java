package coldproof.stats.model;

import coldproof.stats.DotProduct;
import java.util.Arrays;

/**
 * The restricted likelihood and its derivatives at given variance ratios, the run variance profiled out. Symbols as in F. A. Graybill's and
 * in the REML literature: {@code H} the covariance in units of the run variance, {@code P = H^-1 - H^-1 X (X'H^-1 X)^-1 X'H^-1}, {@code Z_k} the
 * indicators of sessions (k = 0) and of blocks (k = 1). Derivatives:
 * {@code d/dr_k = tr(Z_k'P Z_k) - f |Z_k'P y|^2 / y'P y} with f = trials - columns.
 */
final class ProfilePoint {
    final int components;
    final double criterion;
    /** Generalised least squares coordinates beyond the ordinary ones. */
    final double[] coordinates;
    /** {@code y'P y}, 0 or more. */
    final double residualSquares;
    /** {@code (X'H^-1 X)^-1}. */
    final double[][] inverse;
    /** {@code Z_k'P y}. */
    final double[][] score;
    /** {@code tr(Z_k'P Z_k)}. */
    final double[] trace;
    final double[] gradient;

    private final NestedBlocks data;
    private final double[] ratio;
    private final int residualDegrees;
    /** {@code n_i / (1 + r n_i)} of each session. */
    private final double[] sessionWeight;
    /** Sum of the session weights of a block, and that over one plus the block ratio times itself. */
    private final double[] blockSum;
    private final double[] blockWeight;
    /** {@code Z_k'H^-1 X}, one row for each session or block. */
    private final double[][][] cross;
    /** {@code cross_k' cross_k}. */
    private final double[][][] crossSquares;

    /**
     * Evaluates.
     *
     * @param ratio variance ratios, 0 or more: session over run and, where there are blocks, block over run
     */
    ProfilePoint(NestedBlocks data, double... ratio) {
        this.data = data;
        this.ratio = ratio;
        components = ratio.length;
        residualDegrees = data.trials - data.columns;
        sessionWeight = new double[data.sessions];
        blockSum = new double[data.blocks];
        blockWeight = new double[data.blocks];
        double logDeterminant = weigh();
        double[][] blockMean = blockMeans();
        double[][] products = products(blockMean);
        int p = data.columns;
        double[][] factor = new double[p][];
        double[] right = new double[p];
        for (int i = 0; i < p; i++) {
            factor[i] = Arrays.copyOf(products[i], p);
            right[i] = products[i][p];
        }
        logDeterminant += SmallMatrix.factor(factor);
        inverse = SmallMatrix.inverseOfFactored(factor);
        coordinates = SmallMatrix.times(inverse, right);
        residualSquares = Math.max(0, products[p][p] - DotProduct.of(coordinates, right));
        criterion = residualDegrees * Math.log(residualSquares) + logDeterminant;
        cross = new double[components][][];
        score = new double[components][];
        crossSquares = new double[components][p][p];
        trace = new double[components];
        gradient = new double[components];
        for (int k = 0; k < components; k++) {
            fillComponent(k, blockMean);
        }
    }

    private double weigh() {
        double logDeterminant = 0;
        for (int i = 0; i < data.sessions; i++) {
            double size = data.size[i];
            sessionWeight[i] = size / (1 + ratio[0] * size);
            logDeterminant += Math.log1p(ratio[0] * size);
            if (components == 2) {
                blockSum[data.blockOf[i]] += sessionWeight[i];
            }
        }
        for (int b = 0; b < blockSum.length; b++) {
            blockWeight[b] = blockSum[b] / (1 + ratio[1] * blockSum[b]);
            logDeterminant += Math.log1p(ratio[1] * blockSum[b]);
        }
        return logDeterminant;
    }

    private double[][] blockMeans() {
        double[][] means = new double[data.blocks][data.columns + 1];
        if (components == 2) {
            for (int i = 0; i < data.sessions; i++) {
                int b = data.blockOf[i];
                for (int j = 0; j <= data.columns; j++) {
                    means[b][j] += sessionWeight[i] * data.mean[i][j] / blockSum[b];
                }
            }
        }
        return means;
    }

    /** Cross products of columns and residuals with {@code H^-1} between, built from within to between so that nothing cancels. */
    private double[][] products(double[][] blockMean) {
        int width = data.columns + 1;
        double[][] products = new double[width][];
        for (int i = 0; i < width; i++) {
            products[i] = data.within[i].clone();
        }
        double[] distance = new double[width];
        for (int i = 0; i < data.sessions; i++) {
            for (int j = 0; j < width; j++) {
                distance[j] = data.mean[i][j] - (components == 2 ? blockMean[data.blockOf[i]][j] : 0);
            }
            NestedBlocks.addOuter(products, distance, sessionWeight[i]);
        }
        for (int b = 0; b < blockSum.length; b++) {
            NestedBlocks.addOuter(products, blockMean[b], blockWeight[b]);
        }
        return products;
    }

    private void fillComponent(int k, double[][] blockMean) {
        int p = data.columns;
        int rows = k == 0 ? data.sessions : data.blocks;
        cross[k] = new double[rows][p];
        score[k] = new double[rows];
        double squares = 0;
        for (int i = 0; i < rows; i++) {
            double weight = k == 0 ? sessionWeight[i] : blockWeight[i];
            double diagonal = weight;
            double[] centre = k == 0 ? data.mean[i] : blockMean[i];
            double shrink = 0;
            double[] outer = null;
            if (k == 0 && components == 2) {
                int b = data.blockOf[i];
                shrink = ratio[1] * blockWeight[b];
                outer = blockMean[b];
                diagonal -= ratio[1] * weight * weight / (1 + ratio[1] * blockSum[b]);
            }
            double residual = centre[p] - (outer == null ? 0 : shrink * outer[p]);
            for (int j = 0; j < p; j++) {
                double column = centre[j] - (outer == null ? 0 : shrink * outer[j]);
                cross[k][i][j] = weight * column;
                residual -= column * coordinates[j];
            }
            score[k][i] = weight * residual;
            squares += score[k][i] * score[k][i];
            trace[k] += diagonal;
            NestedBlocks.addOuter(crossSquares[k], cross[k][i], 1);
        }
        trace[k] -= SmallMatrix.traceOfProduct(inverse, crossSquares[k]);
        gradient[k] = trace[k] - residualDegrees * squares / residualSquares;
    }

    /** {@code Z_k'H^-1 Z_l} times a matrix with one row for each session or block of l. */
    private double[][] through(int k, int l, double[][] rows) {
        int width = rows[0].length;
        double[][] result = new double[k == 0 ? data.sessions : data.blocks][width];
        if (k == 1 && l == 1) {
            for (int b = 0; b < data.blocks; b++) {
                addScaled(result[b], blockWeight[b], rows[b]);
            }
        } else if (k == 0 && l == 0) {
            double[][] sums = new double[data.blocks][width];
            for (int i = 0; i < data.sessions; i++) {
                addScaled(result[i], sessionWeight[i], rows[i]);
                if (components == 2) {
                    addScaled(sums[data.blockOf[i]], sessionWeight[i], rows[i]);
                }
            }
            for (int i = 0; components == 2 && i < data.sessions; i++) {
                int b = data.blockOf[i];
                addScaled(result[i], -ratio[1] * sessionWeight[i] / (1 + ratio[1] * blockSum[b]), sums[b]);
            }
        } else {
            for (int i = 0; i < data.sessions; i++) {
                int b = data.blockOf[i];
                double entry = sessionWeight[i] / (1 + ratio[1] * blockSum[b]);
                if (k == 0) {
                    addScaled(result[i], entry, rows[b]);
                } else {
                    addScaled(result[b], entry, rows[i]);
                }
            }
        }
        return result;
    }

    private static void addScaled(double[] to, double factor, double[] row) {
        for (int j = 0; j < to.length; j++) {
            to[j] += factor * row[j];
        }
    }

    /** Sum of the squared entries of {@code Z_k'H^-1 Z_l}. */
    private double squaredEntries(int k, int l) {
        double sum = 0;
        if (k == 1 && l == 1) {
            for (double weight : blockWeight) {
                sum += weight * weight;
            }
            return sum;
        }
        double[] second = new double[data.blocks];
        double[] third = new double[data.blocks];
        for (int i = 0; i < data.sessions; i++) {
            double square = sessionWeight[i] * sessionWeight[i];
            sum += square;
            if (components == 2) {
                second[data.blockOf[i]] += square;
                third[data.blockOf[i]] += square * sessionWeight[i];
            }
        }
        if (k == 0 && l == 0) {
            for (int b = 0; b < second.length; b++) {
                double shrink = ratio[1] / (1 + ratio[1] * blockSum[b]);
                sum += -2 * shrink * third[b] + shrink * shrink * second[b] * second[b];
            }
            return sum;
        }
        sum = 0;
        for (int b = 0; b < second.length; b++) {
            double scale = 1 / (1 + ratio[1] * blockSum[b]);
            sum += scale * scale * second[b];
        }
        return sum;
    }

    /** {@code X'H^-1 Z_k Z_k'H^-1 X}. */
    double[][] crossSquares(int k) {
        return crossSquares[k];
    }

    /** {@code X'H^-1 Z_k (Z_k'H^-1 Z_l) Z_l'H^-1 X}. */
    double[][] crossThrough(int k, int l) {
        return SmallMatrix.times(SmallMatrix.transpose(cross[k]), through(k, l, cross[l]));
    }

    /** {@code tr(P V_k P V_l)} with {@code V_k = Z_k Z_k'}. */
    double traceOfPair(int k, int l) {
        double[][] first = SmallMatrix.times(inverse, crossSquares[k]);
        double[][] second = SmallMatrix.times(inverse, crossSquares[l]);
        return squaredEntries(k, l) - 2 * SmallMatrix.traceOfProduct(inverse, crossThrough(k, l))
                + SmallMatrix.traceOfProduct(first, second);
    }

    /** {@code y'P V_k P V_l P y}. */
    double formOfPair(int k, int l) {
        double[][] column = new double[score[l].length][1];
        for (int i = 0; i < column.length; i++) {
            column[i][0] = score[l][i];
        }
        double[][] through = through(k, l, column);
        double sum = 0;
        for (int i = 0; i < score[k].length; i++) {
            sum += score[k][i] * through[i][0];
        }
        return sum - SmallMatrix.form(crossScore(k), inverse, crossScore(l));
    }

    private double[] crossScore(int k) {
        double[] sum = new double[data.columns];
        for (int i = 0; i < score[k].length; i++) {
            addScaled(sum, score[k][i], cross[k][i]);
        }
        return sum;
    }

    /** The variance ratios: session over run and, where there are blocks, block over run. */
    double[] ratios() {
        return ratio.clone();
    }

    /** {@code |Z_k'P y|^2}. */
    double scoreSquares(int k) {
        return DotProduct.of(score[k], score[k]);
    }

    /** Second derivative of the profiled criterion. */
    double curvature(int k, int l) {
        double relative = 2 * formOfPair(k, l) / residualSquares
                - scoreSquares(k) * scoreSquares(l) / (residualSquares * residualSquares);
        return residualDegrees * relative - traceOfPair(k, l);
    }
}
