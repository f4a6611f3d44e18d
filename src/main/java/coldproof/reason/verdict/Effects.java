package coldproof.reason.verdict;

import coldproof.stats.model.DesignMatrix;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToIntFunction;
import java.util.stream.IntStream;

/**
 * The effects that may be in the model of a question: the compared factor, the factors and covariates adjusted for, and interactions of factors two by two.
 * Which interactions are in hangs on the arrangement alone, never on the scores: as many as can be told apart and leave at least half of the degrees of
 * freedom that the plain model has.
 */
final class Effects {
    static final String FACTOR = "factor";

    private final int[] level;
    private final int levels;
    private final List<List<String>> factors;
    private final List<double[]> covariates;

    /**
     * @param level of the compared factor, for each row
     * @param factors labels of each factor adjusted for, a list a factor; those with one label are left out
     * @param covariates values of each covariate; those that do not vary are left out
     */
    Effects(int[] level, int levels, List<List<String>> factors, List<double[]> covariates) {
        this.level = level;
        this.levels = levels;
        this.factors = factors.stream().filter(labels -> labels.stream().distinct().count() > 1).toList();
        this.covariates = covariates.stream().filter(values -> Arrays.stream(values).distinct().count() > 1).toList();
    }

    /** Of trials with all they are adjusted for. */
    static Effects of(List<Observation> trials, int[] level, int levels) {
        int factors = trials.isEmpty() ? 0 : trials.get(0).adjust().size();
        int covariates = trials.isEmpty() ? 0 : trials.get(0).covariates().size();
        return new Effects(level, levels, IntStream.range(0, factors).mapToObj(f -> trials.stream().map(trial -> trial.adjust().get(f)).toList()).toList(),
                IntStream.range(0, covariates).mapToObj(c -> trials.stream().mapToDouble(trial -> trial.covariates().get(c)).toArray()).toList());
    }

    /** Whether anything but the compared factor is in the model. */
    boolean adjusts() {
        return !factors.isEmpty() || !covariates.isEmpty();
    }

    /**
     * The richest model of those that can be told apart and keep enough degrees of freedom.
     *
     * @param degreesOfFreedom left for the test by a model; refuses one that cannot be fitted with an {@link IllegalArgumentException}
     * @throws IllegalArgumentException if even the plain model cannot be fitted
     */
    DesignMatrix richest(ToIntFunction<DesignMatrix> degreesOfFreedom) {
        DesignMatrix plain = plain();
        int ofPlain = degreesOfFreedom.applyAsInt(plain);
        List<DesignMatrix> richer = factors.isEmpty() ? List.of() : List.of(withInteractions(plain, true), withInteractions(plain, false));
        for (DesignMatrix model : richer) {
            try {
                if (2 * degreesOfFreedom.applyAsInt(model) >= ofPlain) {
                    return model;
                }
            } catch (IllegalArgumentException cannotBeToldApart) {
                continue; // documented: an empty cell, or nothing left to test against; a plainer model is tried
            }
        }
        return plain;
    }

    private DesignMatrix plain() {
        DesignMatrix model = DesignMatrix.intercept(level.length).withFactor(FACTOR, level, levels);
        for (int f = 0; f < factors.size(); f++) {
            int[] labels = Analyst.indices(factors.get(f));
            model = model.withFactor(name(f), labels, 1 + IntStream.of(labels).max().orElse(0));
        }
        for (int c = 0; c < covariates.size(); c++) {
            model = model.withCovariate("covariate " + c, LogScores.centred(covariates.get(c)));
        }
        return model;
    }

    private DesignMatrix withInteractions(DesignMatrix plain, boolean alsoOfOthers) {
        DesignMatrix model = plain;
        List<String> names = new ArrayList<>(List.of(FACTOR));
        for (int f = 0; f < factors.size(); f++) {
            for (String other : alsoOfOthers ? List.copyOf(names) : List.of(FACTOR)) {
                model = model.withInteraction(other, name(f));
            }
            names.add(name(f));
        }
        return model;
    }

    private static String name(int factor) {
        return "other " + factor;
    }
}
