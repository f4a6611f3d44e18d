package coldproof.stats.model;

import java.util.Arrays;

/**
 * Sums over sessions, and over blocks that hold whole sessions, from which every quadratic form of
 * {@code H = I + r1 Z1 Z1' + r2 Z2 Z2'} follows in closed form; Z1 and Z2 are the indicators of sessions and blocks, r1 and r2 the ratios of
 * their variances to the run variance. No matrix of the size of the data is formed: all is linear in the number of trials.
 */
final class NestedBlocks {
    final int trials;
    final int columns;
    final int sessions;
    final int blocks;
    final double[] size;
    final int[] blockOf;
    /** Session means of the orthonormal columns and, last, of the residuals. */
    final double[][] mean;
    /** Cross products about the session means, columns and, last, residuals. */
    final double[][] within;

    /**
     * Sums up.
     *
     * @param q orthonormal fixed effects
     * @param residual what they leave of the scores
     * @param session index of the session of each trial, in [0, trials)
     * @param block index of the block of each trial, in [0, trials); null where there are no blocks
     */
    NestedBlocks(OrthonormalColumns q, double[] residual, int[] session, int[] block) {
        trials = residual.length;
        columns = q.count();
        int[] sessionNumber = numbered(session, "session");
        sessions = 1 + largest(sessionNumber);
        size = new double[sessions];
        mean = new double[sessions][columns + 1];
        for (int row = 0; row < trials; row++) {
            size[sessionNumber[row]]++;
        }
        for (int j = 0; j <= columns; j++) {
            double[] column = j < columns ? q.column(j) : residual;
            for (int row = 0; row < trials; row++) {
                mean[sessionNumber[row]][j] += column[row];
            }
        }
        for (int i = 0; i < sessions; i++) {
            for (int j = 0; j <= columns; j++) {
                mean[i][j] /= size[i];
            }
        }
        within = crossProductsAboutMeans(q, residual, sessionNumber);
        blockOf = new int[sessions];
        blocks = block == null ? 0 : findBlocks(sessionNumber, block);
    }

    private double[][] crossProductsAboutMeans(OrthonormalColumns q, double[] residual, int[] sessionNumber) {
        double[][] products = new double[columns + 1][columns + 1];
        double[] distance = new double[columns + 1];
        for (int row = 0; row < trials; row++) {
            double[] centre = mean[sessionNumber[row]];
            for (int j = 0; j < columns; j++) {
                distance[j] = q.column(j)[row] - centre[j];
            }
            distance[columns] = residual[row] - centre[columns];
            addOuter(products, distance, 1);
        }
        return products;
    }

    private int findBlocks(int[] sessionNumber, int[] block) {
        int[] blockNumber = numbered(block, "block");
        Arrays.fill(blockOf, -1);
        for (int row = 0; row < trials; row++) {
            int i = sessionNumber[row];
            if (blockOf[i] >= 0 && blockOf[i] != blockNumber[row]) {
                throw new IllegalArgumentException("the session of trial " + row + " lies in two blocks: blocks must hold whole sessions");
            }
            blockOf[i] = blockNumber[row];
        }
        return 1 + largest(blockNumber);
    }

    private int[] numbered(int[] label, String what) {
        if (label.length != trials) {
            throw new IllegalArgumentException(label.length + " " + what + " labels for " + trials + " trials");
        }
        int[] number = new int[trials];
        int[] ofLabel = new int[trials];
        int next = 0;
        for (int row = 0; row < trials; row++) {
            if (label[row] < 0 || label[row] >= trials) {
                throw new IllegalArgumentException(what + " index " + label[row] + " is outside [0, " + trials + ")");
            }
            if (ofLabel[label[row]] == 0) {
                ofLabel[label[row]] = ++next;
            }
            number[row] = ofLabel[label[row]] - 1;
        }
        return number;
    }

    private static int largest(int[] values) {
        int largest = 0;
        for (int value : values) {
            largest = Math.max(largest, value);
        }
        return largest;
    }

    /** Adds {@code weight x x'}, both triangles. */
    static void addOuter(double[][] to, double[] x, double weight) {
        for (int i = 0; i < to.length; i++) {
            double factor = weight * x[i];
            for (int j = 0; j <= i; j++) {
                double product = factor * x[j];
                to[i][j] += product;
                if (j < i) {
                    to[j][i] += product;
                }
            }
        }
    }
}
