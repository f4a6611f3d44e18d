package coldproof.benchmark;

import coldproof.stats.Tail;
import coldproof.stats.model.DesignMatrix;
import coldproof.stats.model.Estimate;
import coldproof.stats.model.MixedModel;
import coldproof.stats.model.MixedModelFit;
import coldproof.stats.power.Claim;
import coldproof.stats.power.Layout;
import coldproof.stats.power.SampleSize;
import coldproof.stats.randomisation.Effort;
import coldproof.stats.randomisation.RandomisationResult;
import coldproof.stats.randomisation.RandomisationTest;
import coldproof.stats.randomisation.Restriction;
import java.util.Arrays;
import java.util.SplittableRandom;

/** What is timed here and, with the same numbers, in the other languages below src/test/speed. */
final class Tasks {
    private static final int SESSIONS = 8;
    private static final int TRIALS = 6;

    private final double[] twenty = new double[40];
    private final boolean[] against = new boolean[40];
    private final double[] logScores = new double[SESSIONS * TRIALS];
    private final int[] session = new int[SESSIONS * TRIALS];
    private final DesignMatrix effects;
    private final double[] ambient;
    private final double[] fan;

    Tasks() {
        for (int i = 0; i < 40; i++) { // the same formula stands in the other scripts
            against[i] = i >= 20;
            twenty[i] = Math.sin(3.7 * (i + 1)) + (against[i] ? 0.5 : 0);
        }
        int[] ambientLevel = new int[logScores.length];
        int[] fanLevel = new int[logScores.length];
        for (int i = 0; i < logScores.length; i++) {
            session[i] = i / TRIALS;
            ambientLevel[i] = session[i] % 2;
            fanLevel[i] = i % 2;
            logScores[i] = 0.03 * ambientLevel[i] + 0.01 * fanLevel[i] + 0.02 * Math.sin(5.1 * (session[i] + 1)) + 0.012 * Math.sin(7.3 * (i + 1));
        }
        logScores[0] += 0.001;
        effects = DesignMatrix.intercept(logScores.length).withFactor("ambient", ambientLevel, 2).withFactor("fan", fanLevel, 2).withInteraction("ambient", "fan");
        ambient = effects.difference("ambient", 0, 1);
        fan = effects.difference("fan", 0, 1);
    }

    /** 20 + 20 scores, a million random re-assignments. */
    RandomisationResult randomisation() {
        return RandomisationTest.ofGroups(twenty, against, Restriction.NONE).test(new Effort(1, 1_000_000), new SplittableRandom(1));
    }

    /** The same, every one of the 137,846,528,820 assignments counted. */
    RandomisationResult exactRandomisation() {
        return RandomisationTest.ofGroups(twenty, against, Restriction.NONE).test(Effort.STANDARD, new SplittableRandom(1));
    }

    /** 8 sessions of 6 trials, a factor per session and one per trial with their interaction; Satterthwaite's df of both. */
    double satterthwaite() {
        MixedModelFit fit = MixedModel.fit(logScores, effects, session);
        Estimate first = fit.satterthwaite(ambient);
        return first.degreesOfFreedom() + fit.satterthwaite(fan).p();
    }

    /** The same with Kenward and Roger's. */
    double kenwardRoger() {
        MixedModelFit fit = MixedModel.fit(logScores, effects, session);
        return fit.kenwardRoger(ambient).degreesOfFreedom() + fit.kenwardRoger(fan).p();
    }

    /** Trials of each level for a change of 1 to 3 % at 1.5 % noise and 90 % power. */
    int size(int i) {
        Claim claim = new Claim.Difference(Math.log1p((1 + i % 200 / 100.0) / 100), 0.05, Tail.TWO);
        return SampleSize.smallest(claim, new Layout.TwoGroups(Math.sqrt(Math.log1p(0.015 * 0.015))), 0.9).allocation().baseline();
    }

    @Override
    public String toString() {
        return Arrays.toString(twenty);
    }
}
