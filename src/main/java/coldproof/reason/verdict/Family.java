package coldproof.reason.verdict;

import coldproof.stats.interval.Moments;
import coldproof.stats.model.DesignMatrix;
import coldproof.stats.model.JointEstimates;
import coldproof.stats.model.WithinSessions;
import coldproof.stats.multiple.Loadings;
import coldproof.stats.multiple.ManyToOne;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Several changes tested against one baseline from one fit of all their trials.
 *
 * @param comparisons the tests
 * @param method in words
 */
record Family(ManyToOne comparisons, String method) {
    /**
     * The joint test in a stratum; empty where the trials have no such form: pairs, sessions or conditions of unequal size.
     *
     * @param questions one for each change, alike otherwise
     * @param all trials of any level; every change can be judged alone
     */
    static Optional<Family> of(List<Question> questions, List<Observation> all, Stratum stratum) {
        List<String> levels = new ArrayList<>(List.of(questions.get(0).baseline()));
        questions.forEach(question -> levels.add(question.against()));
        List<Observation> trials = all.stream().filter(trial -> levels.contains(trial.level())).toList();
        double[] logScores = LogScores.of(trials, questions.get(0).better());
        int[] level = trials.stream().mapToInt(trial -> levels.indexOf(trial.level())).toArray();
        int[] session = Analyst.indices(trials.stream().map(Observation::session).toList());
        return switch (stratum) {
            case TRIALS -> Effects.of(trials, level, levels.size()).adjusts() ? within(trials, logScores, level, session, levels.size())
                    : Optional.of(new Family(groups(logScores, level, levels.size()), "t tests on log scores with one variance"));
            case BETWEEN_SESSIONS -> Analyst.alike(trials, session) ? Optional.of(between(logScores, level, session, levels.size())) : Optional.empty();
            case WITHIN_SESSIONS -> within(trials, logScores, level, session, levels.size());
            case PAIRS -> Optional.empty();
        };
    }

    private static ManyToOne groups(double[] scores, int[] level, int levels) {
        List<double[]> groups = IntStream.range(0, levels)
                .mapToObj(l -> IntStream.range(0, scores.length).filter(i -> level[i] == l).mapToDouble(i -> scores[i]).toArray()).toList();
        return ManyToOne.ofGroups(groups.get(0), groups.subList(1, levels));
    }

    private static Family between(double[] logScores, int[] level, int[] session, int levels) {
        Map<Integer, List<Integer>> trialsOf = new LinkedHashMap<>();
        for (int i = 0; i < session.length; i++) {
            trialsOf.computeIfAbsent(session[i], s -> new ArrayList<>()).add(i);
        }
        List<List<Integer>> sessions = List.copyOf(trialsOf.values());
        double[] means = sessions.stream().mapToDouble(of -> Moments.of(of.stream().mapToDouble(i -> logScores[i]).toArray()).mean()).toArray();
        int[] levelOf = sessions.stream().mapToInt(of -> level[of.get(0)]).toArray();
        return new Family(groups(means, levelOf, levels), "t tests on session means of log scores with one variance");
    }

    private static Optional<Family> within(List<Observation> trials, double[] logScores, int[] level, int[] session, int levels) {
        DesignMatrix effects = Analyst.effects(trials, level, levels, session);
        List<double[]> contrasts = IntStream.range(1, levels).mapToObj(l -> effects.difference(Effects.FACTOR, 0, l)).toList();
        JointEstimates joint = WithinSessions.tests(logScores, effects, session, contrasts);
        return Loadings.of(joint.correlations())
                .map(loadings -> new Family(ManyToOne.ofEstimates(joint.estimates(), loadings), "least squares of log scores within sessions"));
    }
}
