package coldproof.reason.verdict;

import coldproof.stats.distribution.StudentT;
import coldproof.stats.model.LeastSquares;
import coldproof.stats.series.Autocorrelation;
import coldproof.stats.series.MannKendall;
import coldproof.stats.series.ResidualSteps;
import java.util.ArrayList;
import java.util.List;

/** Looks at what the order of the trials did: whether it is known, whether scores drift, whether neighbours resemble each other. */
final class OrderChecks {
    /** Probability of a needless warning of each look; two looks at a drift share twice as much. */
    static final double ODD = 0.025;

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
        double[][] runs = new double[1 + modelled.run()[place.length - 1]][place.length];
        for (int i = 0; i < level.length; i++) {
            level[i] = modelled.isAgainst(i) ? 1 : 0;
            runs[modelled.run()[i]][i] = 1;
        }
        return squaredCorrelation(LeastSquares.of(level, runs).residuals(), place);
    }

    private double sessionsLean() {
        if (!arrangement.sessionOrderKnown()) {
            return 0;
        }
        double[] level = arrangement.sessions().values().stream().mapToDouble(session -> session.get(0).level().equals(question.against()) ? 1 : 0).toArray();
        return squaredCorrelation(centred(level), centredPlaces(level.length));
    }

    private static double[] centred(double[] values) {
        double mean = LogScores.mean(values);
        return java.util.Arrays.stream(values).map(value -> value - mean).toArray();
    }

    private static double[] centredPlaces(int count) {
        double[] places = new double[count];
        for (int i = 0; i < count; i++) {
            places[i] = i - 0.5 * (count - 1);
        }
        return places;
    }

    private static double squaredCorrelation(double[] a, double[] b) {
        double product = 0;
        double squaresOfA = 0;
        double squaresOfB = 0;
        for (int i = 0; i < a.length; i++) {
            product += a[i] * b[i];
            squaresOfA += a[i] * a[i];
            squaresOfB += b[i] * b[i];
        }
        return squaresOfA == 0 || squaresOfB == 0 ? 0 : product * product / (squaresOfA * squaresOfB);
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
                    + " the estimate; let the device soak longer before the first trial, run in counterbalanced order (ABBA), or adjust for the order."));
        } else if (inside == Drift.NOT_SEEN && over == Drift.NOT_SEEN) {
            found.add(new Check("drift", false, "Too few trials in a row to see a drift."));
        } else {
            Drift seen = inside == Drift.NOT_SEEN ? over : inside;
            found.add(new Check("drift", false, "No drift is seen (" + seen.evidence() + "); one of less than " + Phrases.percent(seen.hidden())
                    + " from first to last could hide in the noise."));
        }
    }

    private static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    private Drift overSessions() {
        double[] means = arrangement.sessions().values().stream().mapToDouble(session -> LogScores.mean(LogScores.of(session, question.better()))).toArray();
        double[][] columns = new double[2][means.length];
        int i = 0;
        for (List<Observation> session : arrangement.sessions().values()) {
            columns[session.get(0).level().equals(question.against()) ? 1 : 0][i++] = 1;
        }
        double[] residuals = LeastSquares.of(means, columns).residuals();
        return Drift.of(means, columns, centredPlaces(means.length), List.of(residuals));
    }

    /** How far values drift along their places, by regression beside the model, and by the signs of what the model leaves. */
    private record Drift(double logChange, double hidden, double regressionP, double signsP) {
        static final Drift NOT_SEEN = new Drift(0, 0, 1, 1);

        static Drift of(double[] scores, double[][] columns, double[] places, List<double[]> runs) {
            LeastSquares model = LeastSquares.of(scores, columns);
            double[] free = model.leftOf(places);
            double squares = 0;
            double product = 0;
            double[] left = model.residuals();
            for (int i = 0; i < free.length; i++) {
                squares += free[i] * free[i];
                product += free[i] * left[i];
            }
            int df = model.degreesOfFreedom() - 1;
            double whole = java.util.Arrays.stream(places).map(place -> place * place).sum();
            if (df < 2 || model.isExact() || squares < 1e-9 * Math.max(whole, 1)) {
                return NOT_SEEN;
            }
            double slope = product / squares;
            double error = Math.sqrt(Math.max(0, model.residualSquares() - slope * product) / df / squares);
            double span = 2 * java.util.Arrays.stream(places).max().orElse(0);
            double p = slope == 0 ? 1 : StudentT.twoSidedP(slope / error, df);
            double hidden = span * (Math.abs(slope) + StudentT.upperPoint(0.025, df) * error);
            return new Drift(slope * span, hidden, p, MannKendall.ofRuns(runs).p());
        }

        boolean warns() {
            return regressionP < ODD || signsP < ODD;
        }

        String evidence() {
            return "regression on the order " + Phrases.p(regressionP) + ", Mann-Kendall " + Phrases.p(signsP);
        }
    }

    private void autocorrelation() {
        boolean neighbours = modelled.inRuns(modelled.scores()).stream().anyMatch(run -> run.length > 1);
        double[][] columns = drifts ? modelled.columnsWith(modelled.places()) : modelled.columns();
        LeastSquares model = LeastSquares.of(modelled.scores(), columns);
        if (!neighbours || model.degreesOfFreedom() < 3 || model.isExact() || modelled.size() > ResidualSteps.MOST) {
            found.add(new Check("autocorrelation", false, modelled.size() > ResidualSteps.MOST ? "Not looked for among more than " + ResidualSteps.MOST + " values."
                    : "Too few trials in a row to see whether neighbours resemble each other."));
            return;
        }
        ResidualSteps steps = ResidualSteps.of(modelled.scores(), columns, modelled.run());
        String size = (drifts ? "beside the drift, " : "") + "autocorrelation of neighbours about " + Phrases.number(steps.lagOne()) + ", " + Phrases.p(steps.pLow());
        if (steps.pLow() >= ODD) {
            found.add(new Check("autocorrelation", false, "Neighbouring trials do not resemble each other more than chance allows (" + size + ")."));
            return;
        }
        int longest = modelled.inRuns(modelled.scores()).stream().mapToInt(run -> run.length).max().orElse(1);
        double worth = Autocorrelation.effectiveSize(longest, Math.max(-0.99, Math.min(0.99, steps.lagOne())));
        found.add(new Check("autocorrelation", true, "Neighbouring trials resemble each other (" + size + "): something wanders more slowly than a trial takes, such as heat"
                + " or weather. " + longest + " trials in a row are worth about " + String.format(java.util.Locale.ROOT, "%.0f", Math.max(1, worth))
                + " independent ones. Mix the levels evenly in the order, wait longer between trials, and trust the randomisation p more than the t test."));
    }
}
