package coldproof.stats.model;

import coldproof.stats.DotProduct;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Split-plot analysis of variance for balanced plans, in closed form: every term is tested in the stratum in which the plan set its factors. A
 * term made of per-session factors only is tested against the spread of session means, any other against the spread of runs.
 *
 * @see "F. Yates, JRSS Supplement 2 (1935) 181-247; G. E. P. Box, J. S. Hunter, W. G. Hunter, Statistics for Experimenters, 2nd ed. (2005), ch. 9"
 */
public final class Strata {
    /** Where a term varies, hence which error it is tested against. */
    public enum Stratum {
        /** Between blocks of sessions. */
        BLOCKS,
        /** Between sessions (inside blocks, where there are blocks). */
        SESSIONS,
        /** Within sessions. */
        RUNS
    }

    /**
     * A factor of the plan.
     *
     * @param name as it appears in the table
     * @param level level of each trial, 0 to {@code levels - 1}
     * @param levels number of levels, 2 or more
     * @param perSession whether the plan sets it once for a whole session
     */
    public record Factor(String name, int[] level, int levels, boolean perSession) {
        /** Copies the levels in. */
        public Factor {
            level = level.clone();
            if (levels < 2) {
                throw new IllegalArgumentException("factor " + name + " has " + levels + " levels, not 2 or more");
            }
            for (int each : level) {
                if (each < 0 || each >= levels) {
                    throw new IllegalArgumentException("factor " + name + " has level " + each + " outside [0, " + levels + ")");
                }
            }
        }

        /** A copy of the levels. */
        @Override
        public int[] level() {
            return level.clone();
        }
    }

    /**
     * A line of the table.
     *
     * @param term the factor, factors joined by a colon, or {@code error}
     * @param stratum where it varies
     * @param degreesOfFreedom 0 or more
     * @param sumOfSquares 0 or more
     * @param test against the error of the stratum; empty for errors and where the stratum has no error left
     */
    public record Line(String term, Stratum stratum, int degreesOfFreedom, double sumOfSquares, Optional<FTest> test) {
        /** Sum of squares over degrees of freedom; 0 where there are none. */
        public double meanSquare() {
            return degreesOfFreedom == 0 ? 0 : sumOfSquares / degreesOfFreedom;
        }
    }

    private record Effect(String name, Stratum stratum, int degreesOfFreedom, double sumOfSquares, double[] perTrial) {}

    private Strata() {}

    /**
     * Analyses a plan without blocks.
     *
     * @param scores log scores, finite
     * @param session index of the session of each trial, in [0, trials)
     * @param factors one or more; all interactions are included
     * @return a line for each term and one error line for each stratum, strata from outside in
     * @throws IllegalArgumentException if lengths differ, a per-session factor changes inside a session, or the plan is not balanced
     */
    public static List<Line> analyse(double[] scores, int[] session, List<Factor> factors) {
        return analyse(scores, session, new int[scores.length], factors);
    }

    /**
     * Analyses a plan whose sessions are grouped in blocks, each holding every combination of the per-session factors equally often.
     *
     * @param block index of the block of each trial, in [0, trials)
     */
    public static List<Line> analyse(double[] scores, int[] session, int[] block, List<Factor> factors) {
        BalancedPlan.require(scores.length, session, block, factors);
        double[] centred = scores.clone();
        subtract(centred, means(centred, new int[centred.length]));
        double[] blockMeans = means(centred, block);
        int blocks = distinct(block);
        int sessions = distinct(session);
        List<Effect> effects = effects(centred, factors);
        double[] sessionLeft = means(centred, session);
        double[] runLeft = centred.clone();
        subtract(runLeft, sessionLeft);
        subtract(sessionLeft, blockMeans);
        int sessionDegrees = sessions - blocks;
        int runDegrees = scores.length - sessions;
        for (Effect effect : effects) {
            if (effect.stratum == Stratum.SESSIONS) {
                subtract(sessionLeft, effect.perTrial);
                sessionDegrees -= effect.degreesOfFreedom;
            } else {
                subtract(runLeft, effect.perTrial);
                runDegrees -= effect.degreesOfFreedom;
            }
        }
        List<Line> lines = new ArrayList<>();
        if (blocks > 1) {
            lines.add(new Line("error", Stratum.BLOCKS, blocks - 1, DotProduct.of(blockMeans, blockMeans), Optional.empty()));
        }
        addStratum(lines, effects, new Line("error", Stratum.SESSIONS, sessionDegrees, DotProduct.of(sessionLeft, sessionLeft), Optional.empty()));
        addStratum(lines, effects, new Line("error", Stratum.RUNS, runDegrees, DotProduct.of(runLeft, runLeft), Optional.empty()));
        return List.copyOf(lines);
    }

    private static void addStratum(List<Line> lines, List<Effect> effects, Line error) {
        for (Effect effect : effects) {
            if (effect.stratum == error.stratum) {
                double meanSquare = effect.sumOfSquares / effect.degreesOfFreedom;
                Optional<FTest> test = error.degreesOfFreedom == 0 || error.sumOfSquares == 0 ? Optional.empty()
                        : Optional.of(FTest.of(meanSquare / error.meanSquare(), effect.degreesOfFreedom, error.degreesOfFreedom));
                lines.add(new Line(effect.name, effect.stratum, effect.degreesOfFreedom, effect.sumOfSquares, test));
            }
        }
        lines.add(error);
    }

    /** Every subset of factors, main effects first: cell means minus the effects of all smaller terms. */
    private static List<Effect> effects(double[] centred, List<Factor> factors) {
        int subsets = 1 << factors.size();
        Effect[] bySubset = new Effect[subsets];
        List<Effect> ordered = new ArrayList<>();
        for (int order = 1; order <= factors.size(); order++) {
            for (int subset = 1; subset < subsets; subset++) {
                if (Integer.bitCount(subset) == order) {
                    bySubset[subset] = effect(centred, factors, subset, bySubset);
                    ordered.add(bySubset[subset]);
                }
            }
        }
        return ordered;
    }

    private static Effect effect(double[] centred, List<Factor> factors, int subset, Effect[] smaller) {
        int[] cell = new int[centred.length];
        StringBuilder name = new StringBuilder();
        int degrees = 1;
        boolean perSession = true;
        for (int f = 0; f < factors.size(); f++) {
            if ((subset & 1 << f) == 0) {
                continue;
            }
            Factor factor = factors.get(f);
            for (int i = 0; i < cell.length; i++) {
                cell[i] = cell[i] * factor.levels + factor.level[i];
            }
            name.append(name.length() == 0 ? "" : ":").append(factor.name);
            degrees *= factor.levels - 1;
            perSession &= factor.perSession;
        }
        double[] perTrial = means(centred, cell);
        for (int part = 1; part < subset; part++) {
            if ((part & subset) == part) {
                subtract(perTrial, smaller[part].perTrial);
            }
        }
        return new Effect(name.toString(), perSession ? Stratum.SESSIONS : Stratum.RUNS, degrees, DotProduct.of(perTrial, perTrial), perTrial);
    }

    /** For each trial the mean of the trials with the same label. */
    private static double[] means(double[] values, int[] label) {
        int largest = 0;
        for (int each : label) {
            largest = Math.max(largest, each);
        }
        double[] sum = new double[largest + 1];
        int[] count = new int[largest + 1];
        for (int i = 0; i < values.length; i++) {
            sum[label[i]] += values[i];
            count[label[i]]++;
        }
        double[] means = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            means[i] = sum[label[i]] / count[label[i]];
        }
        return means;
    }

    private static int distinct(int[] label) {
        return (int) Arrays.stream(label).distinct().count();
    }

    private static void subtract(double[] from, double[] what) {
        for (int i = 0; i < from.length; i++) {
            from[i] -= what[i];
        }
    }
}
