package coldproof.reason.verdict;

import coldproof.stats.series.MannKendall;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * How far values drift along their places, by regression beside the model, and by the signs of what the model leaves.
 *
 * @param logChange from the first place to the last
 * @param hidden the largest change that could still be there
 * @param regressionP two-sided p of the regression
 * @param signsP two-sided p of Mann and Kendall's test
 */
record Drift(double logChange, double hidden, double regressionP, double signsP) {
    static final Drift NOT_SEEN = new Drift(0, 0, 1, 1);

    /**
     * @param places one apart, adding up to 0 in every run
     * @param runs what the model leaves, cut into runs
     * @return {@link #NOT_SEEN} where nothing can be seen
     */
    static Drift of(double[] scores, double[][] columns, double[] places, List<double[]> runs) {
        Optional<AddedColumn> line = AddedColumn.of(scores, columns, places);
        double span = 2 * Arrays.stream(places).max().orElse(0);
        return line.map(found -> new Drift(found.slope() * span, found.largest() * span, found.p(), MannKendall.ofRuns(runs).p())).orElse(NOT_SEEN);
    }

    boolean warns() {
        return regressionP < OrderChecks.ODD || signsP < OrderChecks.ODD;
    }

    String evidence() {
        return "regression on the order " + Phrases.p(regressionP) + ", Mann-Kendall " + Phrases.p(signsP);
    }
}
