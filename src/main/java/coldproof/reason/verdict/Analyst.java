package coldproof.reason.verdict;

import coldproof.plan.Better;
import coldproof.plan.NoiseAssumption;
import coldproof.quantity.LogRatio;
import coldproof.stats.model.DesignMatrix;
import coldproof.stats.model.Estimate;
import coldproof.stats.model.MixedModel;
import coldproof.stats.model.MixedModelFit;
import coldproof.stats.model.NoiseComponents;
import coldproof.stats.model.Pairs;
import coldproof.stats.model.SessionMeans;
import coldproof.stats.model.TwoGroups;
import coldproof.stats.model.WithinSessions;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Tests the change in its stratum. The stratum fixes the error: session means for a factor set once a session, trials inside sessions for one
 * set anew each trial, whatever variances the data happen to show.
 */
final class Analyst {
    static final String FACTOR = "factor";

    private final Question question;
    private final Arrangement arrangement;
    private final Better better;
    private final List<Observation> trials;
    private final double[] logScores;
    private final int[] session;
    private final boolean[] isAgainst;

    Analyst(Question question, Arrangement arrangement) {
        this.question = question;
        this.arrangement = arrangement;
        this.better = question.better();
        this.trials = arrangement.sessions().values().stream().flatMap(List::stream).toList();
        this.logScores = LogScores.of(trials, better);
        this.session = indices(trials.stream().map(Observation::session).toList());
        this.isAgainst = new boolean[trials.size()];
        for (int i = 0; i < isAgainst.length; i++) {
            isAgainst[i] = trials.get(i).level().equals(question.against());
        }
    }

    static int[] indices(List<String> labels) {
        Map<String, Integer> numbers = new LinkedHashMap<>();
        labels.forEach(label -> numbers.putIfAbsent(label, numbers.size()));
        return labels.stream().mapToInt(numbers::get).toArray();
    }

    /** The noise left in the trials when their conditions are taken out; empty when no condition was repeated. */
    Optional<NoiseComponents> noise() {
        try {
            return Optional.of(NoiseComponents.of(logScores, effects(), session));
        } catch (IllegalArgumentException nothingRepeated) {
            return Optional.empty(); // documented: no session has a second trial of a condition, or nothing varies
        }
    }

    Analysis betweenSessions(boolean judgeByCarriedIn) {
        if (judgeByCarriedIn) {
            return byCarriedIn();
        }
        Optional<SessionMeans> means = equalMeans();
        if (means.isPresent() && alike()) {
            return analysis(means.get().pooled(), "t test on session means of log scores");
        }
        Optional<Analysis> mixed = kenwardRoger();
        if (mixed.isPresent()) {
            return mixed.get();
        }
        return analysis(means.orElseGet(this::plainMeans).pooled(), "t test on session means of log scores (sessions of unequal size weigh the same)");
    }

    private Analysis byCarriedIn() {
        NoiseAssumption known = question.carriedIn().orElseThrow();
        SessionMeans means = equalMeans().orElseGet(this::plainMeans);
        double runVariance = square(LogRatio.logSdOfCv(known.runCvPercent()));
        double sessionVariance = square(LogRatio.logSdOfCv(known.sessionCvPercent()));
        double perSession = trialsPerSession(means);
        NoiseComponents noise = new NoiseComponents(Math.max(runVariance, Double.MIN_NORMAL), (int) Math.max(1, known.runDf().orElse(1)),
                runVariance + perSession * sessionVariance, (int) Math.max(1, known.sessionDf().orElse(1)), perSession);
        return analysis(means.judgedBy(noise), "difference of session means judged by noise carried in from " + known.from());
    }

    private static double trialsPerSession(SessionMeans means) {
        double a = means.trialsPerBaselineSession();
        double b = means.trialsPerAgainstSession();
        return 2 / (1 / a + 1 / b);
    }

    boolean alike() {
        return alike(trials, session);
    }

    /** Whether every session has the same trials of every condition of the other factors. */
    static boolean alike(List<Observation> trials, int[] session) {
        Map<Integer, Map<List<String>, Integer>> bySession = new LinkedHashMap<>();
        for (int i = 0; i < session.length; i++) {
            bySession.computeIfAbsent(session[i], s -> new java.util.HashMap<>()).merge(trials.get(i).adjust(), 1, Integer::sum);
        }
        return bySession.values().stream().distinct().count() == 1;
    }

    private Optional<SessionMeans> equalMeans() {
        try {
            int[] cell = indices(trials.stream().map(trial -> String.join("\u0000", trial.adjust())).toList());
            return Optional.of(SessionMeans.of(logScores, session, isAgainst, cell));
        } catch (IllegalArgumentException cellMissing) {
            return Optional.empty(); // documented: a session lacks a condition that another has
        }
    }

    private SessionMeans plainMeans() {
        return SessionMeans.of(logScores, session, isAgainst);
    }

    /** Unequal sessions: REML with Kenward and Roger's adjustment, never above the design's degrees of freedom, never with session noise at zero. */
    private Optional<Analysis> kenwardRoger() {
        try {
            DesignMatrix effects = effects();
            MixedModelFit fit = MixedModel.fit(logScores, effects, session);
            if (fit.sessionVariance() == 0 || fit.sessionDegreesOfFreedom() < 1) {
                return Optional.empty();
            }
            Estimate estimate = fit.kenwardRoger(effects.difference(FACTOR, 0, 1)).withDegreesOfFreedomAtMost(fit.sessionDegreesOfFreedom());
            return Optional.of(analysis(estimate, "mixed model of log scores with a session intercept (REML, Kenward-Roger)"));
        } catch (IllegalArgumentException notEnough) {
            return Optional.empty(); // documented: no degrees of freedom within sessions, or conditions that cannot be told apart
        }
    }

    Analysis withinSessions() {
        return analysis(preparedWithinSessions().test(logScores), "least squares of log scores within sessions");
    }

    /** The test within sessions, ready for any scores of these trials in this order. */
    WithinSessions.Prepared preparedWithinSessions() {
        DesignMatrix effects = effects();
        return WithinSessions.prepare(effects, session, effects.difference(FACTOR, 0, 1));
    }

    Analysis pairs() {
        List<Observation[]> whole = arrangement.pairs();
        double[] baseline = whole.stream().mapToDouble(both -> LogScores.of(both[0], better)).toArray();
        double[] against = whole.stream().mapToDouble(both -> LogScores.of(both[1], better)).toArray();
        Estimate estimate = Pairs.test(baseline, against);
        double[] differences = Pairs.differences(baseline, against);
        double runLogSd = Math.sqrt(LogScores.sumOfSquares(differences) / (differences.length - 1) / 2);
        return new Analysis(estimate, "paired t test on log scores", OptionalDouble.empty(), OptionalDouble.of(runLogSd));
    }

    Analysis singleTrials() {
        DesignMatrix effects = effects();
        if (effects.columns() > 2) {
            Estimate adjusted = WithinSessions.test(logScores, effects, session, effects.difference(FACTOR, 0, 1));
            return analysis(adjusted, "least squares of log scores, adjusted for the other factors");
        }
        List<double[]> groups = new ArrayList<>();
        for (boolean level : new boolean[] {false, true}) {
            groups.add(java.util.stream.IntStream.range(0, logScores.length).filter(i -> isAgainst[i] == level).mapToDouble(i -> logScores[i]).toArray());
        }
        return analysis(TwoGroups.pooled(groups.get(0), groups.get(1)), "two-group t test on log scores");
    }

    private Analysis analysis(Estimate estimate, String method) {
        Optional<NoiseComponents> noise = noise();
        OptionalDouble run = noise.isPresent() ? OptionalDouble.of(noise.get().runLogSd()) : OptionalDouble.empty();
        OptionalDouble between = noise.isPresent() && noise.get().knowsSessions() ? OptionalDouble.of(noise.get().sessionLogSd()) : OptionalDouble.empty();
        return new Analysis(estimate, method, between, run);
    }

    private DesignMatrix effects() {
        int[] level = new int[trials.size()];
        for (int i = 0; i < level.length; i++) {
            level[i] = isAgainst[i] ? 1 : 0;
        }
        return effects(trials, level, 2);
    }

    /** The compared factor, and every other factor that varies among these trials with its interaction. */
    static DesignMatrix effects(List<Observation> trials, int[] level, int levelCount) {
        DesignMatrix effects = DesignMatrix.intercept(trials.size()).withFactor(FACTOR, level, levelCount);
        int others = trials.isEmpty() ? 0 : trials.get(0).adjust().size();
        for (int other = 0; other < others; other++) {
            int column = other;
            int[] levels = indices(trials.stream().map(trial -> trial.adjust().get(column)).toList());
            int count = 1 + java.util.Arrays.stream(levels).max().orElse(0);
            if (count > 1) {
                effects = effects.withFactor("other " + other, levels, count).withInteraction(FACTOR, "other " + other);
            }
        }
        return effects;
    }

    private static double square(double value) {
        return value * value;
    }
}
