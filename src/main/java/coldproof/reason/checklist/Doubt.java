package coldproof.reason.checklist;

import coldproof.plan.NoiseAssumption;
import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.quantity.LogRatio;
import coldproof.study.StudyState;
import coldproof.study.Trial;
import java.util.List;
import java.util.Optional;

/**
 * Why a score looks like a slip of the pen. It asks for a second look and never refuses.
 *
 * @param score the score in doubt
 * @param usual geometric mean of the trials it is compared with
 * @param trials how many these are
 * @param sameCondition whether they are of the same condition; else they are all trials so far
 */
public record Doubt(double score, double usual, int trials, boolean sameCondition) {
    private static final double LEAST_OFF = Math.log(1.1); // a tenth: no two runs of one condition differ so by noise alone (common practice)
    private static final double NOISE_SPREADS = 6; // spreads of a single trial under the planned noise
    private static final double OTHER_CONDITION_OFF = Math.log(1.6); // no change of condition at a bench gives that much (common practice)

    /**
     * Compares a score with what is known.
     *
     * @param score above 0
     */
    public static Optional<Doubt> of(Plan plan, StudyState state, Position position, double score) {
        List<Trial> same = state.trials().stream().filter(trial -> trial.recorded().levels().equals(position.levels())).toList();
        boolean sameCondition = !same.isEmpty();
        List<Trial> known = sameCondition ? same : state.trials();
        if (known.isEmpty()) {
            return Optional.empty();
        }
        double usual = known.stream().mapToDouble(trial -> Math.log(trial.score())).average().orElseThrow();
        double off = Math.abs(Math.log(score) - usual);
        double allowed = sameCondition ? Math.max(LEAST_OFF, NOISE_SPREADS * spread(plan)) : OTHER_CONDITION_OFF;
        return off > allowed ? Optional.of(new Doubt(score, Math.exp(usual), known.size(), sameCondition)) : Optional.empty();
    }

    private static double spread(Plan plan) {
        return plan.noise().map(Doubt::spread).orElse(0.0);
    }

    private static double spread(NoiseAssumption noise) {
        return Math.hypot(LogRatio.logSdOfCv(noise.runCvPercent()), LogRatio.logSdOfCv(noise.sessionCvPercent()));
    }

    /** How far off, percent: above 0 is larger than usual. */
    public double percentOff() {
        return 100 * (score / usual - 1);
    }
}
