package coldproof.report.page;

import coldproof.plan.Layout;
import coldproof.study.Trial;
import coldproof.stats.distribution.StudentT;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The scores of a study as plots show them: by session and level, with the interval that run-to-run noise alone gives. */
final class Scores {
    private final List<Run> runs;
    private final List<Group> groups;

    /**
     * A trial that counts.
     *
     * @param order place in the order the trials were run, first is 1
     * @param session its session
     * @param level of the compared factor
     * @param condition levels of all factors
     * @param score the metric
     */
    record Run(int order, int session, String level, Map<String, String> condition, double score) {}

    /**
     * Trials of one level in one session, or of one level where there are no sessions.
     *
     * @param session number; 0 where there are none
     * @param level of the compared factor
     * @param runs the trials
     * @param mean geometric mean of the scores
     * @param low end of the interval; NaN where nothing was repeated
     * @param high end
     */
    record Group(int session, String level, List<Run> runs, double mean, double low, double high) {}

    private Scores(List<Run> runs, List<Group> groups) {
        this.runs = runs;
        this.groups = groups;
    }

    List<Run> runs() {
        return runs;
    }

    List<Group> groups() {
        return groups;
    }

    static Scores of(StudyContent content) {
        String factor = content.plan().compare().factor();
        List<Run> runs = new ArrayList<>();
        for (Trial trial : content.state().trials()) {
            runs.add(new Run(runs.size() + 1, trial.recorded().session(), trial.recorded().levels().getOrDefault(factor, ""), trial.recorded().levels(), trial.score()));
        }
        boolean sessions = content.plan().layout().kind() == Layout.Kind.SESSIONS;
        return new Scores(List.copyOf(runs), groups(runs, sessions, 1 - content.plan().errors().falseAlarm()));
    }

    private static List<Group> groups(List<Run> runs, boolean sessions, double level) {
        double[] noise = noise(runs);
        double reach = noise[1] >= 1 ? StudentT.upperPoint((1 - level) / 2, noise[1]) * Math.sqrt(noise[0]) : Double.NaN;
        Map<List<Object>, List<Run>> byGroup = new LinkedHashMap<>();
        runs.forEach(run -> byGroup.computeIfAbsent(List.of(sessions ? run.session() : 0, run.level()), key -> new ArrayList<>()).add(run));
        List<Group> groups = new ArrayList<>();
        byGroup.values().forEach(members -> {
            double mean = members.stream().mapToDouble(run -> Math.log(run.score())).average().orElseThrow();
            double half = reach / Math.sqrt(members.size());
            groups.add(new Group(sessions ? members.get(0).session() : 0, members.get(0).level(), List.copyOf(members), Math.exp(mean), Math.exp(mean - half),
                    Math.exp(mean + half)));
        });
        return groups;
    }

    /** Variance of log scores inside a condition of a session, pooled, and its degrees of freedom. */
    private static double[] noise(List<Run> runs) {
        Map<List<Object>, List<Double>> cells = new LinkedHashMap<>();
        runs.forEach(run -> cells.computeIfAbsent(List.of(run.session(), run.condition()), key -> new ArrayList<>()).add(Math.log(run.score())));
        double squares = 0;
        int df = 0;
        for (List<Double> cell : cells.values()) {
            double mean = cell.stream().mapToDouble(x -> x).average().orElseThrow();
            squares += cell.stream().mapToDouble(x -> (x - mean) * (x - mean)).sum();
            df += cell.size() - 1;
        }
        return new double[] {df == 0 ? Double.NaN : squares / df, df};
    }

    /** What is left of each log score when the mean of its condition is taken out, in percent. */
    double[] percentFromCondition() {
        Map<Map<String, String>, List<Double>> conditions = new LinkedHashMap<>();
        runs.forEach(run -> conditions.computeIfAbsent(run.condition(), key -> new ArrayList<>()).add(Math.log(run.score())));
        return runs.stream().mapToDouble(run -> {
            double mean = conditions.get(run.condition()).stream().mapToDouble(x -> x).average().orElseThrow();
            return 100 * Math.expm1(Math.log(run.score()) - mean);
        }).toArray();
    }
}
