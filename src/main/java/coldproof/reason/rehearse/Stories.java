package coldproof.reason.rehearse;

import coldproof.plan.Claim;
import coldproof.plan.NoiseAssumption;
import coldproof.plan.Plan;
import coldproof.quantity.LogRatio;
import coldproof.reason.rehearse.bench.QuickScores;
import coldproof.reason.rehearse.bench.ScoreSpread;
import java.util.List;

/** The stories of a change of known size, told with the noise the plan expects. */
final class Stories {
    private static final double WORK_SECONDS = 240; // of a trial, where the plan gives no time
    private static final double LINGERS = 0.7; // correlation of neighbouring trials in the part that lingers
    private static final double DISTURBED = 0.05; // share of trials disturbed
    private final Script script;
    private final NoiseAssumption noise;
    private final int[] levels;

    Stories(Script script, NoiseAssumption noise) {
        this.script = script;
        this.noise = noise;
        levels = script.levels();
    }

    private boolean ofGain() {
        return script.plan().claim() == Claim.GAIN;
    }

    Told noChange() {
        return told(Story.Kind.NO_CHANGE, ofGain() ? "no gain" : "no change", 0, spread());
    }

    Told matters() {
        return told(Story.Kind.MATTERS, (ofGain() ? "the gain" : "the change") + " that matters", script.question().margin(), spread());
    }

    /** The stories of the plan's own noise, and those in which the bench is rougher than it says. */
    List<Told> all() {
        Plan plan = script.plan();
        String none = ofGain() ? "no gain, " : "no change, ";
        return List.of(noChange(), matters(), told(Story.Kind.TWICE, "twice that", Math.log1p(2 * plan.mattersPercent() / 100), spread()),
                told(Story.Kind.DRIFT, none + "a drift", 0, drifting()),
                told(Story.Kind.LINGERING, none + "noise lingers", 0, lingering()),
                told(Story.Kind.DISTURBED, none + "disturbed", 0, disturbed()));
    }

    private Told told(Story.Kind kind, String name, double trueLog, ScoreSpread spread) {
        double work = script.plan().budget().trialSeconds().orElse(WORK_SECONDS);
        return new Told(new Story(kind, name, trueLog), QuickScores.given(spread, work, new double[] {0, trueLog, 0}), levels);
    }

    private ScoreSpread spread() {
        return ScoreSpread.of(noise.runCvPercent(), noise.sessionCvPercent());
    }

    /** A steady drift that adds up to what matters from the first trial to the last, in the direction that favours the changed level. */
    private ScoreSpread drifting() {
        int steps = Math.max(1, levels.length - 1);
        double direction = meanPlace(1) >= meanPlace(0) ? 1 : -1;
        double perTrial = LogRatio.toPercent(direction * script.question().margin() / steps);
        return new ScoreSpread(noise.runCvPercent(), noise.sessionCvPercent(), Math.max(-50, Math.min(50, perTrial)), 0, 0, 0, 0, 0, 0);
    }

    private double meanPlace(int level) {
        double sum = 0;
        int count = 0;
        for (int i = 0; i < levels.length; i++) {
            sum += levels[i] == level ? i : 0;
            count += levels[i] == level ? 1 : 0;
        }
        return sum / count;
    }

    /** Half of the run-to-run variance passes from trial to trial. */
    private ScoreSpread lingering() {
        double part = noise.runCvPercent() / Math.sqrt(2);
        return new ScoreSpread(part, noise.sessionCvPercent(), 0, 0, part, LINGERS, 0, 0, 0);
    }

    private ScoreSpread disturbed() {
        return new ScoreSpread(noise.runCvPercent(), noise.sessionCvPercent(), 0, 0, 0, 0, 0, 0, DISTURBED);
    }
}
