package coldproof.reason.verdict;

import coldproof.stats.model.DesignMatrix;
import coldproof.stats.model.LeastSquares;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The values of a question as a linear model sees them, in the order they were run: log scores with a level for every session and every effect of the model, or the
 * log differences of pairs with their mean. What the model leaves is the noise that the checks look at.
 */
final class Modelled {
    private final List<String> names = new ArrayList<>();
    private final List<Boolean> against = new ArrayList<>();
    private double[] scores;
    private int[] run;
    private double[][] columns;
    private boolean ordered;

    private Modelled() {}

    static Modelled of(Question question, Stratum stratum, Arrangement arrangement) {
        return stratum == Stratum.PAIRS ? pairs(question, arrangement) : trials(question, arrangement);
    }

    private static Modelled trials(Question question, Arrangement arrangement) {
        Modelled modelled = new Modelled();
        modelled.ordered = arrangement.hasOrder();
        List<Observation> all = new ArrayList<>();
        List<Integer> runs = new ArrayList<>();
        int number = 0;
        for (List<Observation> session : arrangement.sessions().values()) {
            List<Observation> inOrder = new ArrayList<>(session);
            if (modelled.ordered) {
                inOrder.sort(Comparator.comparingDouble(Observation::order));
            }
            for (Observation trial : inOrder) {
                all.add(trial);
                runs.add(number);
                modelled.against.add(trial.level().equals(question.against()));
                modelled.names.add(name(trial));
            }
            number++;
        }
        modelled.scores = LogScores.of(all, question.better());
        modelled.run = runs.stream().mapToInt(Integer::intValue).toArray();
        List<double[]> sessions = indicators(runs);
        int[] level = all.stream().mapToInt(trial -> trial.level().equals(question.against()) ? 1 : 0).toArray();
        modelled.columns = together(sessions, Effects.of(all, level, 2)
                .richest(matrix -> LeastSquares.of(modelled.scores, together(sessions, matrix)).degreesOfFreedom()));
        return modelled;
    }

    private static double[][] together(List<double[]> sessions, DesignMatrix effects) {
        List<double[]> columns = new ArrayList<>(sessions);
        columns.addAll(List.of(effects.copyOfColumns()));
        return columns.toArray(double[][]::new);
    }

    private static String name(Observation trial) {
        String place = Double.isNaN(trial.order()) ? "" : "run " + (trial.order() == Math.rint(trial.order()) ? Long.toString((long) trial.order()) : Double.toString(trial.order()));
        String session = trial.session().isEmpty() ? "" : "session " + trial.session();
        String where = session + (session.isEmpty() || place.isEmpty() ? "" : ", ") + place;
        return trial.level() + (where.isEmpty() ? "" : " in " + where) + " (" + trial.score() + ")";
    }

    private static Modelled pairs(Question question, Arrangement arrangement) {
        Modelled modelled = new Modelled();
        modelled.ordered = arrangement.hasOrder();
        List<Observation[]> whole = new ArrayList<>(arrangement.pairs());
        if (modelled.ordered) {
            whole.sort(Comparator.comparingDouble(both -> both[0].order() + both[1].order()));
        }
        modelled.scores = whole.stream().mapToDouble(both -> LogScores.of(both[1], question.better()) - LogScores.of(both[0], question.better())).toArray();
        modelled.run = new int[whole.size()];
        double[] ones = new double[whole.size()];
        Arrays.fill(ones, 1);
        modelled.columns = new double[][] {ones};
        whole.forEach(both -> modelled.names.add("pair " + both[0].pair() + " (" + both[0].score() + ", " + both[1].score() + ")"));
        return modelled;
    }

    private static List<double[]> indicators(List<?> labels) {
        Map<Object, double[]> columns = new LinkedHashMap<>();
        for (int i = 0; i < labels.size(); i++) {
            columns.computeIfAbsent(labels.get(i), label -> new double[labels.size()])[i] = 1;
        }
        return List.copyOf(columns.values());
    }

    int size() {
        return scores.length;
    }

    double[] scores() {
        return scores.clone();
    }

    int[] run() {
        return run.clone();
    }

    /** Whether the run order is known. */
    boolean isOrdered() {
        return ordered;
    }

    /** The model's columns; a copy of the outer array. */
    double[][] columns() {
        return columns.clone();
    }

    double[][] columnsWith(double[] column) {
        double[][] more = Arrays.copyOf(columns, columns.length + 1);
        more[columns.length] = column;
        return more;
    }

    String name(int i) {
        return names.get(i);
    }

    /** Whether the value is of the changed level; nothing for pairs. */
    boolean isAgainst(int i) {
        return against.get(i);
    }

    /** Place of each value in its run, centred: one apart, adding up to 0 in every run. */
    double[] places() {
        double[] places = new double[run.length];
        int start = 0;
        for (int i = 1; i <= run.length; i++) {
            if (i == run.length || run[i] != run[start]) {
                for (int j = start; j < i; j++) {
                    places[j] = j - start - 0.5 * (i - start - 1);
                }
                start = i;
            }
        }
        return places;
    }

    /** The values cut into their runs. */
    List<double[]> inRuns(double[] values) {
        List<double[]> runs = new ArrayList<>();
        int start = 0;
        for (int i = 1; i <= run.length; i++) {
            if (i == run.length || run[i] != run[start]) {
                runs.add(Arrays.copyOfRange(values, start, i));
                start = i;
            }
        }
        return runs;
    }
}
