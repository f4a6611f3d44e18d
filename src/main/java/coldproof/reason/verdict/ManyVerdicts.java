package coldproof.reason.verdict;

import coldproof.quantity.Interval;
import coldproof.stats.model.Estimate;
import coldproof.stats.model.Pairs;
import coldproof.stats.model.TwoGroups;
import coldproof.stats.model.WithinSessions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.Collectors;

/**
 * The decision alone, for many sets of scores of one arrangement of trials: the same word and decision as {@link Verdicts#judge}, without
 * randomisation test, checks and what more is needed. What does not hang on the scores is worked out once. Immutable.
 */
public final class ManyVerdicts {
    /**
     * What became of one set of scores.
     *
     * @param word what they say
     * @param decision what became of the claim
     * @param sameness whether the interval that judges sameness lies within what matters; the word may still be another, which comes first
     */
    public record Outcome(Word word, Decision decision, boolean sameness) {
        /** Where no scores could carry a verdict. */
        public static final Outcome UNDECIDED = new Outcome(Word.UNDECIDED, Decision.UNDECIDED, false);
    }

    /** Tests one set of log scores, in the order the trials were given. */
    private interface Test {
        Estimate of(double[] logScores);
    }

    private final Question question;
    private final List<Observation> trials;
    private final Stratum stratum;
    private final Optional<String> obstacle;
    private final Test test;
    private final Ruler ruler;
    private final double degreesOfFreedom;
    private final double reach;
    private final double equivalenceReach;

    private ManyVerdicts(Question question, List<Observation> trials) {
        this.question = question;
        this.trials = numbered(trials);
        Verdicts sample = new Verdicts(question, this.trials, RunOrders.untested(), new SplittableRandom(0));
        Optional<Estimate> alone = sample.estimate();
        Optional<Verdict> otherwise = alone.isPresent() ? Optional.empty()
                : Optional.of(Verdicts.judge(question, this.trials, RunOrders.untested(), new SplittableRandom(0)));
        stratum = sample.stratum();
        obstacle = otherwise.map(Verdict::reason).filter(reason -> !reason.isEmpty());
        test = obstacle.isEmpty() ? test() : scores -> Estimate.of(0, 0, 1);
        degreesOfFreedom = alone.map(Estimate::degreesOfFreedom).or(() -> otherwise.flatMap(Verdict::estimate).map(Verdict.Change::degreesOfFreedom))
                .orElse(1.0);
        ruler = Ruler.alone(ErrorRates.of(question));
        reach = ruler.reach().applyAsDouble(Estimate.of(0, 1, degreesOfFreedom));
        equivalenceReach = ruler.equivalenceReach().applyAsDouble(Estimate.of(0, 1, degreesOfFreedom));
    }

    private ManyVerdicts(ManyVerdicts like, Ruler ruler) {
        question = like.question;
        trials = like.trials;
        stratum = like.stratum;
        obstacle = like.obstacle;
        test = like.test;
        this.ruler = ruler;
        degreesOfFreedom = like.degreesOfFreedom;
        reach = ruler.reach().applyAsDouble(Estimate.of(0, 1, degreesOfFreedom));
        equivalenceReach = ruler.equivalenceReach().applyAsDouble(Estimate.of(0, 1, degreesOfFreedom));
    }

    /**
     * Makes an arrangement ready.
     *
     * @param question what is asked
     * @param trials the trials in the order their scores will come; their own scores do not matter
     * @throws IllegalArgumentException if the question pools noise carried in
     */
    public static ManyVerdicts of(Question question, List<Observation> trials) {
        if (question.poolsCarriedIn()) {
            throw new IllegalArgumentException("noise pooled in from elsewhere is judged in full only");
        }
        return new ManyVerdicts(question, trials);
    }

    /** The same at other error rates. */
    ManyVerdicts by(Ruler other) {
        return new ManyVerdicts(this, other);
    }

    /** Degrees of freedom of the test; those of unequal sessions depend on the scores, and these are of one set of them. */
    double degreesOfFreedom() {
        return degreesOfFreedom;
    }

    /** The whole part of each trial's score is its place, so that it is known again wherever it has been put; the rest is noise of a sort. */
    private static List<Observation> numbered(List<Observation> trials) {
        SplittableRandom noise = new SplittableRandom(0);
        List<Observation> numbered = new ArrayList<>();
        for (Observation trial : trials) {
            numbered.add(trial.withScore(numbered.size() + 1 + 0.9 * noise.nextDouble()));
        }
        return List.copyOf(numbered);
    }

    private static int place(Observation numbered) {
        return (int) numbered.score() - 1;
    }

    /** Why no scores at all could carry a verdict in this arrangement; empty when they can. */
    public Optional<String> obstacle() {
        return obstacle;
    }

    /** What the change is tested against. */
    public Stratum stratum() {
        return stratum;
    }

    /**
     * Judges one set of scores.
     *
     * @param logScores natural logarithms turned so that better is larger, one for each trial in the order given; further ones do not count
     */
    public Outcome judge(double[] logScores) {
        Estimate estimate = test.of(logScores);
        if (estimate.isWithoutNoise()) {
            return Outcome.UNDECIDED;
        }
        boolean known = estimate.degreesOfFreedom() == degreesOfFreedom;
        Interval interval = known ? Ruler.around(estimate, 1 - ruler.rates().change(), reach) : ruler.interval(estimate);
        Interval equivalence = known ? Ruler.around(estimate, 1 - 2 * ruler.rates().sameness(), equivalenceReach) : ruler.equivalence(estimate);
        Word word = Word.of(interval, equivalence, question.margin());
        return new Outcome(word, word.decision(question.claim(), interval, question.margin()), equivalence.liesInside(-question.margin(), question.margin()));
    }

    private Test test() {
        Arrangement arrangement = new Arrangement(question, trials);
        Analyst analyst = new Analyst(question, arrangement);
        return switch (stratum) {
            case BETWEEN_SESSIONS -> between(arrangement, analyst);
            case WITHIN_SESSIONS -> prepared(analyst.prepared(), analyst.trials());
            case PAIRS -> analyst.adjusts() ? prepared(analyst.preparedPairs(), analyst.pairedTrials()) : pairs(arrangement);
            case TRIALS -> {
                if (analyst.adjusts()) {
                    yield prepared(analyst.prepared(), analyst.trials());
                }
                int[] baseline = places(arrangement.of(question.baseline()));
                int[] against = places(arrangement.of(question.against()));
                yield scores -> TwoGroups.pooled(picked(scores, baseline), picked(scores, against));
            }
        };
    }

    private Test between(Arrangement arrangement, Analyst analyst) {
        if (arrangement.hasSingleSession() || !analyst.alike()) {
            return scores -> new Analyst(question, new Arrangement(question, scored(scores))).analyse(Stratum.BETWEEN_SESSIONS).estimate();
        }
        List<SessionMean> baseline = sessions(arrangement, question.baseline());
        List<SessionMean> against = sessions(arrangement, question.against());
        return scores -> TwoGroups.pooled(means(scores, baseline), means(scores, against));
    }

    private List<Observation> scored(double[] logScores) {
        List<Observation> scored = new ArrayList<>();
        for (Observation trial : trials) {
            scored.add(trial.withScore(Math.exp(question.better().sign() * logScores[place(trial)])));
        }
        return scored;
    }

    /** A session's mean: every condition of the other factors weighs the same, however many trials it has. */
    private record SessionMean(int[] places, double[] weights) {
        static SessionMean of(List<Observation> session) {
            Map<List<String>, Long> counts = session.stream().collect(Collectors.groupingBy(Observation::adjust, Collectors.counting()));
            double[] weights = session.stream().mapToDouble(trial -> 1.0 / (counts.size() * counts.get(trial.adjust()))).toArray();
            return new SessionMean(ManyVerdicts.places(session), weights);
        }

        double of(double[] scores) {
            double mean = 0;
            for (int i = 0; i < places.length; i++) {
                mean += weights[i] * scores[places[i]];
            }
            return mean;
        }
    }

    private static List<SessionMean> sessions(Arrangement arrangement, String level) {
        return arrangement.sessions().values().stream().filter(session -> session.get(0).level().equals(level)).map(SessionMean::of).toList();
    }

    private static Test prepared(WithinSessions.Prepared prepared, List<Observation> trials) {
        int[] places = places(trials);
        return scores -> prepared.test(picked(scores, places));
    }

    private Test pairs(Arrangement arrangement) {
        List<int[]> whole = new ArrayList<>();
        for (Observation first : arrangement.of(question.baseline())) {
            arrangement.of(question.against()).stream().filter(second -> second.pair().equals(first.pair())).findFirst()
                    .ifPresent(second -> whole.add(new int[] {place(first), place(second)}));
        }
        int[] baseline = whole.stream().mapToInt(both -> both[0]).toArray();
        int[] against = whole.stream().mapToInt(both -> both[1]).toArray();
        return scores -> Pairs.test(picked(scores, baseline), picked(scores, against));
    }

    private static int[] places(List<Observation> trials) {
        return trials.stream().mapToInt(ManyVerdicts::place).toArray();
    }

    private static double[] picked(double[] scores, int[] places) {
        double[] picked = new double[places.length];
        for (int i = 0; i < places.length; i++) {
            picked[i] = scores[places[i]];
        }
        return picked;
    }

    private static double[] means(double[] scores, List<SessionMean> sessions) {
        double[] means = new double[sessions.size()];
        for (int s = 0; s < means.length; s++) {
            means[s] = sessions.get(s).of(scores);
        }
        return means;
    }
}
