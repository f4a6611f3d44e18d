package coldproof.reason.verdict;

import coldproof.plan.Better;
import coldproof.stats.interval.Moments;
import java.util.Arrays;
import java.util.List;

/** Scores as the analysis sees them: natural logarithms, turned so that better is larger. */
final class LogScores {
    private LogScores() {}

    static double of(Observation trial, Better better) {
        return better.sign() * Math.log(trial.score());
    }

    static double[] of(List<Observation> trials, Better better) {
        return trials.stream().mapToDouble(trial -> of(trial, better)).toArray();
    }

    /** The values less their mean. */
    static double[] centred(double[] values) {
        double mean = Moments.of(values).mean();
        return Arrays.stream(values).map(value -> value - mean).toArray();
    }
}
