package coldproof.reason.verdict;

import coldproof.quantity.Interval;
import coldproof.quantity.LogRatio;
import coldproof.stats.model.Estimate;
import coldproof.stats.model.NoiseComponents;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.UnaryOperator;
import java.util.random.RandomGenerator;

/** Judges a change. */
public final class Verdicts {
    private static final double ROUNDING = 1e-13; // of the logarithm of a score, and what sums of some dozens of them lose

    private final Question question;
    private final Arrangement arrangement;
    private final Stratum stratum;
    private final RunOrders orders;
    private final RandomGenerator chance;

    Verdicts(Question question, List<Observation> trials, RunOrders orders, RandomGenerator chance) {
        this.question = question;
        this.arrangement = new Arrangement(question, trials);
        this.stratum = arrangement.stratum();
        this.orders = orders;
        this.chance = chance;
    }

    /**
     * Judges the change from baseline to the changed level.
     *
     * @param question what is asked; fixed before the data were looked at
     * @param trials the trials, of any level; only those of the two compared levels count
     * @param orders the orders that could have been drawn, for the randomisation test
     * @param chance drawn from where the orders are too many to go through
     */
    public static Verdict judge(Question question, List<Observation> trials, RunOrders orders, RandomGenerator chance) {
        return new Verdicts(question, trials, orders, chance).verdict(Ruler.alone(ErrorRates.of(question)));
    }

    /** The verdict by the intervals that a ruler gives. */
    Verdict verdict(Ruler ruler) {
        return verdict(ruler, analysis -> analysis);
    }

    /**
     * The verdict by the intervals that a ruler gives, on a better test of the same change than these trials alone allow.
     *
     * @param better gives the test to go by, from that of these trials alone
     */
    Verdict verdict(Ruler ruler, UnaryOperator<Analysis> better) {
        Optional<String> obstacle = arrangement.obstacle(stratum).or(this::tooFew);
        Optional<String> onlySession = stratum == Stratum.BETWEEN_SESSIONS && obstacle.isEmpty() && !judgeByCarriedIn() ? arrangement.onlySession()
                : Optional.empty();
        if (onlySession.isPresent()) {
            return cannotCarry(onlySessionReason(onlySession.get()), oneSessionMore(), ruler);
        }
        if (obstacle.isPresent()) {
            return cannotCarry(obstacle.get(), MoreNeeded.NOTHING, ruler);
        }
        Analyst analyst = new Analyst(question, arrangement);
        Optional<String> inseparable = judgeByCarriedIn() ? Optional.empty() : analyst.inseparable(stratum);
        if (inseparable.isPresent()) {
            return cannotCarry(inseparable.get(), MoreNeeded.NOTHING, ruler);
        }
        Analysis analysis = better.apply(analyst.analyse(stratum));
        if (isWithoutNoise(analysis)) {
            return cannotCarry("the scores do not vary at all, so there is no noise to judge a change by: record them with more digits", MoreNeeded.NOTHING,
                    ruler);
        }
        return decide(analysis, ruler);
    }

    /** Whether scores of one condition are all the same, but for rounding in their logarithms. */
    private boolean isWithoutNoise(Analysis analysis) {
        double largest = Arrays.stream(LogScores.of(arrangement.trials(), question.better())).map(Math::abs).max().orElse(0);
        return analysis.estimate().standardError() <= ROUNDING * Math.max(1, largest);
    }

    /** Whether these trials carry a verdict of their own noise. */
    boolean standsAlone() {
        return arrangement.obstacle(stratum).isEmpty() && tooFew().isEmpty() && !question.poolsCarriedIn()
                && !(stratum == Stratum.BETWEEN_SESSIONS && arrangement.hasSingleSession());
    }

    /** The test of these trials alone; empty where they cannot carry a verdict of their own noise. */
    Optional<Estimate> estimate() {
        return standsAlone() ? Optional.of(new Analyst(question, arrangement).analyse(stratum).estimate()).filter(estimate -> !estimate.isWithoutNoise())
                : Optional.empty();
    }

    /** No verdict yet, for a reason that does not lie in the trials; how they came out is not shown, for whoever knows it has looked. */
    Verdict tooEarly(String reason) {
        return cannotCarry(reason, MoreNeeded.NOTHING, Ruler.alone(ErrorRates.of(question)), Optional.empty(), OptionalDouble.empty());
    }

    Stratum stratum() {
        return stratum;
    }

    /** Whether a level has one session and there is noise with degrees of freedom to judge it by. */
    private boolean judgeByCarriedIn() {
        return stratum == Stratum.BETWEEN_SESSIONS && arrangement.hasSingleSession() && CarryingIn.of(question, stratum).isPresent();
    }

    private String onlySessionReason(String level) {
        return question.factor() + " " + level + " has only one session, so the change cannot be told from that day: at least one more session of it is needed, "
                + "or noise carried in from a pilot with its degrees of freedom; more trials in the same session do not help";
    }

    private MoreNeeded oneSessionMore() {
        return new MoreNeeded(OptionalInt.of(1), OptionalInt.empty(),
                "at least 1 more session of a level that has one; then it can be said how many settle it");
    }

    private Optional<String> tooFew() {
        int baseline = arrangement.of(question.baseline()).size();
        int against = arrangement.of(question.against()).size();
        return switch (stratum) {
            case TRIALS -> baseline + against < 3 ? Optional.of("there are too few trials to see the noise: at least two of each level are needed") : Optional.empty();
            case PAIRS -> arrangement.wholePairs() < 2 ? Optional.of("there are fewer than two whole pairs") : Optional.empty();
            case WITHIN_SESSIONS -> baseline + against - arrangement.sessions().size() - 1 < 1
                    ? Optional.of("no degrees of freedom are left within sessions: add a session, or trials to one") : Optional.empty();
            case BETWEEN_SESSIONS -> Optional.empty();
        };
    }

    /** The verdict where the data cannot carry one; the estimate is shown where there is one, the word stays undecided. */
    private Verdict cannotCarry(String reason, MoreNeeded moreNeeded, Ruler ruler) {
        Optional<Analysis> analysis = shown();
        return cannotCarry(reason, moreNeeded, ruler, analysis, analysis.isPresent() ? OptionalDouble.empty() : BareChange.of(question, arrangement, stratum));
    }

    private Verdict cannotCarry(String reason, MoreNeeded moreNeeded, Ruler ruler, Optional<Analysis> analysis, OptionalDouble bareLog) {
        Optional<Interval> none = Optional.empty();
        Optional<Verdict.Bare> bare = bareLog.isEmpty() ? Optional.empty() : Optional.of(new Verdict.Bare(bareLog.getAsDouble(), metricPercent(bareLog.getAsDouble())));
        return new Verdict(Word.UNDECIDED, Decision.UNDECIDED, AtLeastMatters.POSSIBLE, reason, analysis.map(a -> change(a.estimate())), bare,
                analysis.map(a -> ruler.interval(a.estimate())).or(() -> none), analysis.map(a -> ruler.equivalence(a.estimate())).or(() -> none),
                analysis.map(Analysis::method).orElse("none: " + reason), stratum, sessions(), trials(), percent(analysis.map(Analysis::sessionLogSd)),
                percent(analysis.map(Analysis::runLogSd).or(() -> bare.map(change -> runLogSd()))), Optional.empty(), moreNeeded,
                analysis.isPresent() ? checks(analysis.get()) : List.of(), analysis.flatMap(Analysis::carried));
    }

    /** The noise from run to run that trials of one condition in one session show, though nothing can be judged by it. */
    private OptionalDouble runLogSd() {
        Optional<NoiseComponents> noise = stratum == Stratum.PAIRS ? Optional.empty() : new Analyst(question, arrangement).noise();
        return noise.filter(found -> found.runLogSd() > ROUNDING).map(found -> OptionalDouble.of(found.runLogSd())).orElse(OptionalDouble.empty());
    }

    private Optional<Analysis> shown() {
        boolean both = !arrangement.of(question.baseline()).isEmpty() && !arrangement.of(question.against()).isEmpty();
        boolean enough = both && tooFew().isEmpty() && (stratum != Stratum.BETWEEN_SESSIONS
                || arrangement.sessionsWith(question.baseline()) + arrangement.sessionsWith(question.against()) > 2 && arrangement.obstacle(stratum).filter(
                        text -> text.contains("both levels")).isEmpty());
        if (!enough || stratum == Stratum.WITHIN_SESSIONS && arrangement.obstacle(stratum).filter(text -> text.startsWith("no session")).isPresent()) {
            return Optional.empty();
        }
        Analyst analyst = new Analyst(question, arrangement);
        if (!judgeByCarriedIn() && analyst.inseparable(stratum).isPresent()) {
            return Optional.empty();
        }
        Analysis analysis = analyst.analyse(stratum);
        return isWithoutNoise(analysis) ? Optional.empty() : Optional.of(analysis);
    }

    private Verdict decide(Analysis analysis, Ruler ruler) {
        Estimate estimate = analysis.estimate();
        Interval interval = ruler.interval(estimate);
        Interval equivalence = ruler.equivalence(estimate);
        Word word = Word.of(interval, equivalence, question.margin());
        Decision decision = word.decision(question.claim(), interval, question.margin());
        Optional<Randomisation> randomisation = orders.test(question, stratum, arrangement, chance);
        MoreNeeded more = decision == Decision.UNDECIDED ? Shortfall.of(question, stratum, arrangement, analysis, ruler) : MoreNeeded.NOTHING;
        return new Verdict(word, decision, AtLeastMatters.of(interval, question.margin()), "", Optional.of(change(estimate)), Optional.empty(), Optional.of(interval),
                Optional.of(equivalence), analysis.method(), stratum, sessions(), trials(), percent(Optional.of(analysis.sessionLogSd())),
                percent(Optional.of(analysis.runLogSd())), randomisation, more, checks(analysis, randomisation), analysis.carried());
    }

    private List<Check> checks(Analysis analysis) {
        List<Check> checks = new ArrayList<>(Checks.of(question, stratum, arrangement));
        analysis.carried().map(Checks::carried).ifPresent(checks::add);
        return checks;
    }

    private List<Check> checks(Analysis analysis, Optional<Randomisation> randomisation) {
        List<Check> checks = checks(analysis);
        Agreement.of(question, stratum, arrangement, analysis, randomisation, chance).ifPresent(checks::add);
        return checks;
    }

    private Verdict.Change change(Estimate estimate) {
        return new Verdict.Change(estimate.logDifference(), estimate.standardError(), estimate.degreesOfFreedom(), estimate.t(), estimate.p(),
                metricPercent(estimate.logDifference()));
    }

    private double metricPercent(double log) {
        return LogRatio.toPercent(question.better().sign() * log);
    }

    private static OptionalDouble percent(Optional<OptionalDouble> logSd) {
        return logSd.isPresent() && logSd.get().isPresent() ? OptionalDouble.of(LogRatio.cvPercentOfLogSd(logSd.get().getAsDouble())) : OptionalDouble.empty();
    }

    private List<Integer> sessions() {
        return arrangement.hasSessions() ? List.of(arrangement.sessionsWith(question.baseline()), arrangement.sessionsWith(question.against())) : List.of();
    }

    private List<Integer> trials() {
        List<Observation> counted = stratum == Stratum.PAIRS ? arrangement.inWholePairs() : arrangement.trials();
        int baseline = (int) counted.stream().filter(trial -> trial.level().equals(question.baseline())).count();
        return List.of(baseline, counted.size() - baseline);
    }
}
