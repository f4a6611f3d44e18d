package coldproof.reason.verdict;

import coldproof.plan.Better;
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

    static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }

    /** The values less their mean. */
    static double[] centred(double[] values) {
        double mean = mean(values);
        return Arrays.stream(values).map(value -> value - mean).toArray();
    }

    static double sumOfSquares(double[] values) {
        double mean = mean(values);
        double sum = 0;
        for (double value : values) {
            sum += (value - mean) * (value - mean);
        }
        return sum;
    }
}
