package coldproof.stats.model;

import coldproof.stats.DataTable;

/** One experiment of the simulated split plots: data, effects and fit. */
final class SplitPlot {
    final double[] logScores;
    final int[] session;
    final int[] ambient;
    final int[] fan;
    private final DesignMatrix effects;

    SplitPlot(String experiment, boolean withDrift) {
        DataTable data = DataTable.read("model/split-plot-data.csv").where("experiment", experiment);
        logScores = data.numbers("score");
        for (int i = 0; i < logScores.length; i++) {
            logScores[i] = Math.log(logScores[i]);
        }
        session = data.codes("session");
        ambient = indicator(data.texts("ambient"), "chilled");
        fan = indicator(data.texts("fan"), "maximum");
        DesignMatrix matrix = DesignMatrix.intercept(logScores.length).withFactor("ambient", ambient, 2).withFactor("fan", fan, 2)
                .withInteraction("ambient", "fan");
        effects = withDrift ? matrix.withCovariate("drift", centred(data.numbers("order"))) : matrix;
    }

    private static int[] indicator(String[] levels, String second) {
        int[] codes = new int[levels.length];
        for (int i = 0; i < codes.length; i++) {
            codes[i] = levels[i].equals(second) ? 1 : 0;
        }
        return codes;
    }

    private double[] centred(double[] order) {
        double[] sum = new double[order.length];
        int[] count = new int[order.length];
        for (int i = 0; i < order.length; i++) {
            sum[session[i]] += order[i];
            count[session[i]]++;
        }
        double[] centred = new double[order.length];
        for (int i = 0; i < order.length; i++) {
            centred[i] = order[i] - sum[session[i]] / count[session[i]];
        }
        return centred;
    }

    MixedModelFit fit() {
        return MixedModel.fit(logScores, effects, session);
    }

    DesignMatrix effects() {
        return effects;
    }

    double[] contrast(String name) {
        switch (name) {
            case "ambient":
            case "fan":
                return effects.difference(name, 0, 1);
            case "interaction":
                return effects.differenceOfDifferences("ambient", 0, 1, "fan", 0, 1);
            case "drift":
                return effects.slope("drift");
            default:
                throw new IllegalArgumentException(name);
        }
    }
}
