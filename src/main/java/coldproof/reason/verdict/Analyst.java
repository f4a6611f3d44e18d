package coldproof.reason.verdict;

import coldproof.plan.Better;
import coldproof.stats.interval.Moments;
import coldproof.stats.model.DesignMatrix;
import coldproof.stats.model.Estimate;
import coldproof.stats.model.NoiseComponents;
import coldproof.stats.model.Pairs;
import coldproof.stats.model.TwoGroups;
import coldproof.stats.model.WithinSessions;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * Tests the change in its stratum. The stratum fixes the error: session means for a factor set once a session, trials inside sessions for one
 * set anew each trial, whatever variances the data happen to show.
 */
final class Analyst {
    private final Question question;
    private final Arrangement arrangement;
    private final Better better;
    private final List<Observation> trials;
    private final double[] logScores;
    private final int[] session;
    private final int[] level;

    Analyst(Question question, Arrangement arrangement) {
        this.question = question;
        this.arrangement = arrangement;
        this.better = question.better();
        this.trials = arrangement.sessions().values().stream().flatMap(List::stream).toList();
        this.logScores = LogScores.of(trials, better);
        this.session = indices(trials.stream().map(Observation::session).toList());
        this.level = trials.stream().mapToInt(this::level).toArray();
    }

    private int level(Observation trial) {
        return trial.level().equals(question.against()) ? 1 : 0;
    }

    static int[] indices(List<String> labels) {
        Map<String, Integer> numbers = new LinkedHashMap<>();
        labels.forEach(label -> numbers.putIfAbsent(label, numbers.size()));
        return labels.stream().mapToInt(numbers::get).toArray();
    }

    /** The noise left in the trials when their conditions are taken out; empty when no condition was repeated. */
    Optional<NoiseComponents> noise() {
        try {
            DesignMatrix effects = Effects.of(trials, level, 2).richest(matrix -> NoiseComponents.of(logScores, matrix, session).runDegreesOfFreedom());
            return Optional.of(NoiseComponents.of(logScores, effects, session));
        } catch (IllegalArgumentException nothingRepeated) {
            return Optional.empty(); // documented: no session has a second trial of a condition, or nothing varies
        }
    }

    /** The test in a stratum, by the noise of the trials, and by that carried in where the question wants it or a level has one session. */
    Analysis analyse(Stratum stratum) {
        Optional<CarryingIn> carrying = CarryingIn.of(question, stratum);
        if (stratum == Stratum.BETWEEN_SESSIONS && arrangement.hasSingleSession() && carrying.isPresent()) {
            return withNoise(carrying.get().singleSessions(between().means()));
        }
        Analysis own = switch (stratum) {
            case BETWEEN_SESSIONS -> betweenSessions();
            case WITHIN_SESSIONS -> withinSessions();
            case PAIRS -> pairs();
            case TRIALS -> singleTrials();
        };
        if (carrying.isEmpty() || !question.poolsCarriedIn() || own.estimate().isWithoutNoise() || stratum != Stratum.BETWEEN_SESSIONS && own.runLogSd().isEmpty()) {
            return own;
        }
        return stratum == Stratum.BETWEEN_SESSIONS ? withNoise(carrying.get().sessions(own, between().means()))
                : withSds(carrying.get().runs(own), own);
    }

    private static Analysis withSds(Analysis judged, Analysis own) {
        return new Analysis(judged.estimate(), judged.method(), own.sessionLogSd(), own.runLogSd(), judged.carried());
    }

    private Analysis betweenSessions() {
        BetweenSessions.Tested tested = between().test();
        String method = tested.method() + adjusted();
        return tested.fit().map(fit -> new Analysis(tested.estimate(), method, OptionalDouble.of(Math.sqrt(fit.sessionVariance())),
                OptionalDouble.of(Math.sqrt(fit.runVariance())))).orElseGet(() -> analysis(tested.estimate(), method));
    }

    /** The difference of session means, whatever it is worth; empty where another factor was set once a session too. */
    OptionalDouble differenceOfSessions() {
        BetweenSessions sessions = between();
        return sessions.adjusts() ? OptionalDouble.empty() : OptionalDouble.of(sessions.means().difference());
    }

    private BetweenSessions between() {
        return new BetweenSessions(trials, logScores, session, level);
    }

    /** Why the change cannot be told from something adjusted for, in a sentence; empty where it can. */
    Optional<String> inseparable(Stratum stratum) {
        try {
            switch (stratum) {
                case BETWEEN_SESSIONS -> between().test();
                case WITHIN_SESSIONS, TRIALS -> prepared();
                case PAIRS -> preparedPairs();
            }
            return Optional.empty();
        } catch (IllegalArgumentException aliased) {
            return Optional.of(adjusts() ? question.factor() + " cannot be told from what is adjusted for, or nothing is left to judge it by: adjust for less"
                    : "no degrees of freedom are left: add trials");
        }
    }

    /** Whether anything is adjusted for. */
    boolean adjusts() {
        return Effects.of(trials, level, 2).adjusts();
    }

    private String adjusted() {
        return adjusts() ? ", adjusted for what else was set" : "";
    }

    boolean alike() {
        return alike(trials, session);
    }

    /** Whether every session has the same trials of every condition of the other factors, and nothing else is adjusted for. */
    static boolean alike(List<Observation> trials, int[] session) {
        if (trials.stream().anyMatch(trial -> !trial.covariates().isEmpty())) {
            return false;
        }
        Map<Integer, Map<List<String>, Integer>> bySession = new LinkedHashMap<>();
        for (int i = 0; i < session.length; i++) {
            bySession.computeIfAbsent(session[i], s -> new HashMap<>()).merge(trials.get(i).adjust(), 1, Integer::sum);
        }
        return bySession.values().stream().distinct().count() == 1;
    }

    private Analysis withinSessions() {
        return analysis(prepared().test(logScores), "least squares of log scores within sessions" + adjusted());
    }

    /** The test within sessions, ready for any scores of these trials in this order. */
    WithinSessions.Prepared prepared() {
        return prepared(trials, level, session);
    }

    /** The test within pairs, ready for any scores of {@link #pairedTrials}. */
    WithinSessions.Prepared preparedPairs() {
        List<Observation> paired = pairedTrials();
        return prepared(paired, paired.stream().mapToInt(this::level).toArray(), indices(paired.stream().map(Observation::pair).toList()));
    }

    List<Observation> trials() {
        return trials;
    }

    /** The trials of whole pairs. */
    List<Observation> pairedTrials() {
        return arrangement.pairs().stream().flatMap(Arrays::stream).toList();
    }

    private static WithinSessions.Prepared prepared(List<Observation> trials, int[] level, int[] session) {
        DesignMatrix effects = effects(trials, level, 2, session);
        return WithinSessions.prepare(effects, session, effects.difference(Effects.FACTOR, 0, 1));
    }

    /** The model of a factor set per trial: what is common to a session drops out. */
    static DesignMatrix effects(List<Observation> trials, int[] level, int levels, int[] session) {
        return Effects.of(trials, level, levels).richest(matrix -> WithinSessions.prepare(matrix, session, matrix.difference(Effects.FACTOR, 0, 1)).degreesOfFreedom());
    }

    private Analysis pairs() {
        List<Observation[]> whole = arrangement.pairs();
        double[] baseline = whole.stream().mapToDouble(both -> LogScores.of(both[0], better)).toArray();
        double[] against = whole.stream().mapToDouble(both -> LogScores.of(both[1], better)).toArray();
        Estimate estimate = adjusts() ? preparedPairs().test(LogScores.of(pairedTrials(), better)) : Pairs.test(baseline, against);
        double[] differences = Pairs.differences(baseline, against);
        double runLogSd = Math.sqrt(Moments.of(differences).variance() / 2);
        return new Analysis(estimate, "paired t test on log scores" + adjusted(), OptionalDouble.empty(), OptionalDouble.of(runLogSd));
    }

    private Analysis singleTrials() {
        if (adjusts()) {
            return analysis(prepared().test(logScores), "least squares of log scores" + adjusted());
        }
        List<double[]> groups = new ArrayList<>();
        for (int each = 0; each < 2; each++) {
            int of = each;
            groups.add(IntStream.range(0, logScores.length).filter(i -> level[i] == of).mapToDouble(i -> logScores[i]).toArray());
        }
        return analysis(TwoGroups.pooled(groups.get(0), groups.get(1)), "two-group t test on log scores");
    }

    private Analysis analysis(Estimate estimate, String method) {
        return withNoise(new Analysis(estimate, method, OptionalDouble.empty(), OptionalDouble.empty()));
    }

    /** With the noise that these trials show. */
    private Analysis withNoise(Analysis analysis) {
        Optional<NoiseComponents> noise = noise();
        OptionalDouble run = noise.isPresent() ? OptionalDouble.of(noise.get().runLogSd()) : OptionalDouble.empty();
        OptionalDouble between = noise.isPresent() && noise.get().knowsSessions() ? OptionalDouble.of(noise.get().sessionLogSd()) : OptionalDouble.empty();
        return new Analysis(analysis.estimate(), analysis.method(), between, run, analysis.carried());
    }
}
