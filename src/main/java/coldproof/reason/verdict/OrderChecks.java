package coldproof.reason.verdict;

import coldproof.stats.DotProduct;
import coldproof.stats.interval.ConfidenceInterval;
import coldproof.stats.interval.Moments;
import coldproof.stats.model.Estimate;
import coldproof.stats.model.LeastSquares;
import coldproof.stats.series.Autocorrelation;
import coldproof.stats.series.ResidualSteps;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Looks at what the order of the trials did: whether it is known, whether scores drift, whether neighbours resemble each other. */
final class OrderChecks {
    /** Probability of a needless warning of each look; two looks at a drift share twice as much. */
    static final double ODD = 0.025;

    /** Of pairs: mirrored neighbours bear autocorrelation worst of all layouts, so that it is told of sooner. */
    private static final double ODD_IN_PAIRS = 0.1;

    private static final double LEANS = 0.5; // share of the order's squares that the levels explain, from which the two can hardly be told apart

    private final Question question;
    private final Stratum stratum;
    private final Arrangement arrangement;
    private final Modelled modelled;
    private final List<Check> found = new ArrayList<>();
    private boolean drifts;

    private OrderChecks(Question question, Stratum stratum, Arrangement arrangement, Modelled modelled) {
        this.question = question;
        this.stratum = stratum;
        this.arrangement = arrangement;
        this.modelled = modelled;
    }

    static List<Check> of(Question question, Stratum stratum, Arrangement arrangement, Modelled modelled) {
        OrderChecks checks = new OrderChecks(question, stratum, arrangement, modelled);
        checks.order();
        if (modelled.isOrdered() && modelled.size() > 3) {
            checks.drift();
            checks.warmUp();
            checks.autocorrelation();
        }
        return checks.found;
    }

    private void order() {
        if (!modelled.isOrdered()) {
            found.add(new Check("order", true, "The run order is not known, so neither a drift nor its share in the change can be looked for. Say which column"
                    + " holds it (--order), and next time draw the order by lot and note it."));
            return;
        }
        if (stratum == Stratum.BETWEEN_SESSIONS && !arrangement.sessionOrderKnown()) {
            found.add(new Check("order", true, "In which order the sessions were run cannot be told from their names, so neither a drift over them nor its share in the"
                    + " change can be looked for. Number them as they were run, or name them by their dates."));
            return;
        }
        String leaning = stratum == Stratum.PAIRS ? pairsLean() : levelsLean();
        found.add(leaning.isEmpty() ? new Check("order", false, "The run order is known and " + question.factor() + " does not follow it.")
                : new Check("order", true, leaning));
    }

    private String pairsLean() {
        long baselineFirst = arrangement.pairs().stream().filter(both -> both[0].order() < both[1].order()).count();
        long others = arrangement.pairs().size() - baselineFirst;
        if (Math.min(baselineFirst, others) > 0 || baselineFirst + others < 2) {
            return "";
        }
        return "In every pair " + (others == 0 ? question.baseline() : question.against()) + " was run first: whatever the second place does (a warmer device, a fuller"
                + " battery) counts as the change. Run about half of the pairs the other way round.";
    }

    /** Whether one level tends to come late: the squared correlation of level and place, inside sessions or over them. */
    private String levelsLean() {
        double leaning = stratum == Stratum.BETWEEN_SESSIONS ? sessionsLean() : trialsLean();
        if (leaning < LEANS) {
            return "";
        }
        return question.against() + " and " + question.baseline() + " were hardly mixed in the run order: a drift would look much like the change. Add "
                + (stratum == Stratum.BETWEEN_SESSIONS ? "sessions" : "trials") + " that mix them, counterbalanced (ABBA) or by lot.";
    }

    private double trialsLean() {
        double[] place = modelled.places();
        double[] level = new double[place.length];
        int[] runOf = modelled.run();
        double[][] runs = new double[1 + runOf[place.length - 1]][place.length];
        for (int i = 0; i < level.length; i++) {
            level[i] = modelled.isAgainst(i) ? 1 : 0;
            runs[runOf[i]][i] = 1;
        }
        return squaredCorrelation(LeastSquares.of(level, runs).residuals(), place);
    }

    private double sessionsLean() {
        if (!arrangement.sessionOrderKnown()) {
            return 0;
        }
        double[] level = arrangement.sessions().values().stream().mapToDouble(session -> session.get(0).level().equals(question.against()) ? 1 : 0).toArray();
        return squaredCorrelation(LogScores.centred(level), centredPlaces(level.length));
    }

    private static double[] centredPlaces(int count) {
        double[] places = new double[count];
        for (int i = 0; i < count; i++) {
            places[i] = i - 0.5 * (count - 1);
        }
        return places;
    }

    private static double squaredCorrelation(double[] a, double[] b) {
        double product = DotProduct.of(a, b);
        double squares = DotProduct.of(a, a) * DotProduct.of(b, b);
        return squares == 0 ? 0 : product * product / squares;
    }

    private void drift() {
        Drift inside = Drift.of(modelled.scores(), modelled.columns(), modelled.places(), modelled.inRuns(
                LeastSquares.of(modelled.scores(), modelled.columns()).residuals()));
        Drift over = stratum == Stratum.BETWEEN_SESSIONS && arrangement.sessionOrderKnown() ? overSessions() : Drift.NOT_SEEN;
        List<String> texts = new ArrayList<>();
        String unit = stratum == Stratum.PAIRS ? "the change itself" : "scores";
        drifts = inside.warns();
        if (drifts) {
            texts.add(unit + " drift by " + Phrases.signed(inside.logChange()) + " from the first to the last " + (stratum == Stratum.PAIRS ? "pair"
                    : modelled.inRuns(modelled.scores()).size() > 1 ? "trial of a session" : "trial") + " (" + inside.evidence() + ")");
        }
        if (over.warns()) {
            texts.add("sessions drift by " + Phrases.signed(over.logChange()) + " from the first to the last (" + over.evidence() + ")");
        }
        if (!texts.isEmpty()) {
            found.add(new Check("drift", true, capital(Phrases.list(texts)) + ". Where the levels were mixed evenly in the order, it has widened the interval rather than moved"
                    + " the estimate" + adjusted() + ". Let the device soak longer before the first trial, run in counterbalanced order (ABBA), or adjust for the order"
                    + " (--adjust-for) if that was decided beforehand."));
        } else if (inside == Drift.NOT_SEEN && over == Drift.NOT_SEEN) {
            found.add(new Check("drift", false, "Too few trials in a row to see a drift."));
        } else {
            Drift seen = inside == Drift.NOT_SEEN ? over : inside;
            found.add(new Check("drift", false, "No drift is seen (" + seen.evidence() + "); one of less than " + Phrases.percent(seen.hidden())
                    + " from first to last could hide in the noise."));
        }
    }

    /** What the change would be beside a straight drift inside sessions; said only where that can move its interval. */
    private String adjusted() {
        if (!drifts || stratum == Stratum.BETWEEN_SESSIONS || stratum == Stratum.PAIRS) {
            return "";
        }
        List<Observation> placed = new ArrayList<>();
        for (List<Observation> session : arrangement.sessions().values()) {
            List<Observation> inOrder = session.stream().sorted(Comparator.comparingDouble(Observation::order)).toList();
            double[] places = centredPlaces(inOrder.size());
            for (int i = 0; i < places.length; i++) {
                placed.add(inOrder.get(i).withCovariate(places[i]));
            }
        }
        Analyst analyst = new Analyst(question, new Arrangement(question, placed));
        if (analyst.inseparable(stratum).isPresent()) {
            return "";
        }
        Estimate estimate = analyst.analyse(stratum).estimate();
        ConfidenceInterval interval = estimate.interval(1 - question.falseAlarm());
        return ": beside a straight drift it would be " + Phrases.signed(estimate.logDifference()) + " ("
                + Phrases.signed(interval.low()) + " to " + Phrases.signed(interval.high()) + ")";
    }

    private static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    private Drift overSessions() {
        double[] means = arrangement.sessions().values().stream().mapToDouble(session -> Moments.of(LogScores.of(session, question.better())).mean()).toArray();
        double[][] columns = new double[2][means.length];
        int i = 0;
        for (List<Observation> session : arrangement.sessions().values()) {
            columns[session.get(0).level().equals(question.against()) ? 1 : 0][i++] = 1;
        }
        double[] residuals = LeastSquares.of(means, columns).residuals();
        return Drift.of(means, columns, centredPlaces(means.length), List.of(residuals));
    }

    /** Whether the first trial of a session stands apart from those after it. */
    private void warmUp() {
        List<double[]> runs = modelled.inRuns(modelled.scores());
        if (stratum == Stratum.PAIRS || runs.size() < 2 || runs.stream().anyMatch(run -> run.length < 3)) {
            return;
        }
        double[] first = new double[modelled.size()];
        int[] run = modelled.run();
        for (int i = 0; i < first.length; i++) {
            first[i] = i == 0 || run[i] != run[i - 1] ? 1 : 0;
        }
        double[][] columns = drifts ? modelled.columnsWith(modelled.places()) : modelled.columns();
        Optional<AddedColumn> step = AddedColumn.of(modelled.scores(), columns, first);
        if (step.isEmpty()) {
            return;
        }
        String size = Phrases.signed(step.get().slope()) + " against the trials after it, " + Phrases.p(step.get().p());
        found.add(step.get().p() < ODD ? new Check("warm-up", true, "The first trial of a session stands apart (" + size + "): the device was not yet where it stays."
                + " Soak longer, or run a warm-up trial that does not count; decide so before the next session, not after seeing its scores.")
                : new Check("warm-up", false, "The first trial of a session does not stand apart (" + size + ")."));
    }

    private void autocorrelation() {
        boolean pairs = stratum == Stratum.PAIRS;
        Modelled series = pairs ? Modelled.of(question, Stratum.TRIALS, arrangement) : modelled;
        double odd = pairs ? ODD_IN_PAIRS : ODD;
        boolean neighbours = series.inRuns(series.scores()).stream().anyMatch(run -> run.length > 1);
        double[][] columns = drifts || pairs ? series.columnsWith(series.places()) : series.columns();
        LeastSquares model = LeastSquares.of(series.scores(), columns);
        if (!neighbours || model.degreesOfFreedom() < 3 || model.isExact() || series.size() > ResidualSteps.MOST) {
            found.add(new Check("autocorrelation", false, series.size() > ResidualSteps.MOST ? "Not looked for among more than " + ResidualSteps.MOST + " values."
                    : "Too few trials in a row to see whether neighbours resemble each other."));
            return;
        }
        ResidualSteps steps = ResidualSteps.of(series.scores(), columns, series.run());
        String size = (drifts || pairs ? "beside a drift, " : "") + "autocorrelation of neighbours about " + Phrases.number(steps.lagOne()) + ", " + Phrases.p(steps.pLow());
        if (steps.pLow() >= odd) {
            found.add(new Check("autocorrelation", false, "Neighbouring trials do not resemble each other more than chance allows (" + size + ")."));
            return;
        }
        int longest = series.inRuns(series.scores()).stream().mapToInt(run -> run.length).max().orElse(1);
        double worth = Autocorrelation.effectiveSize(longest, Math.max(-0.99, Math.min(0.99, steps.lagOne())));
        String advice = pairs ? "Pairs take most of it out, but where neighbouring pairs mirror each other (AB BA) about 6 false alarms in 100 are to be expected rather than 5."
                : longest + " trials in a row are worth about " + String.format(Locale.ROOT, "%.0f", Math.max(1, worth)) + " independent ones.";
        found.add(new Check("autocorrelation", true, "Neighbouring trials resemble each other (" + size + "): something wanders more slowly than a trial takes, such as heat"
                + " or weather. " + advice + " Mix the levels evenly in the order, wait longer between trials, and trust the randomisation p more than the t test."));
    }
}
