package coldproof.reason.verdict;

import coldproof.quantity.Counted;
import coldproof.stats.DotProduct;
import coldproof.stats.model.LeastSquares;
import coldproof.stats.series.BrownForsythe;
import coldproof.stats.series.GeneralisedEsd;
import coldproof.stats.series.ShapiroWilk;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Looks at whether the data are what the method assumes: on what is left of the scores when sessions and conditions are taken out. */
final class Checks {
    /** Probability of a needless warning of one check about shape; the method bears small departures, so that only clear ones are told. */
    private static final double SHAPE = 0.01;

    private static final int FEWEST_FOR_SHAPE = 8; // degrees of freedom below which Shapiro-Wilk says next to nothing
    private static final int FEWEST_FOR_SPREAD = 4; // values of a level
    private static final int MOST_SUSPECTS = 10; // each costs a fit
    private static final int MOST_FOR_SHAPE = 5000; // for which Royston's approximation was made
    private static final double MOST_WORK = 5e7; // values times the square of the model's columns: about a tenth of a second a fit

    private final Question question;
    private final Stratum stratum;
    private final Arrangement arrangement;
    private final Modelled modelled;
    private final LeastSquares fit;

    private Checks(Question question, Stratum stratum, Arrangement arrangement) {
        this.question = question;
        this.stratum = stratum;
        this.arrangement = arrangement;
        this.modelled = Modelled.of(question, stratum, arrangement);
        this.fit = LeastSquares.of(modelled.scores(), modelled.columns());
    }

    static List<Check> of(Question question, Stratum stratum, Arrangement arrangement) {
        double columns = (stratum == Stratum.PAIRS ? 0 : arrangement.sessions().size()) + 2.0;
        if (arrangement.trials().size() * columns * columns > MOST_WORK) {
            List<Check> rows = new ArrayList<>(RowChecks.of(stratum, arrangement));
            rows.add(new Check("size", false, "So many trials and sessions are not looked at one by one; judge a part of them (--where) to have them looked at."));
            return rows;
        }
        Checks checks = new Checks(question, stratum, arrangement);
        List<Check> found = new ArrayList<>(OrderChecks.of(question, stratum, arrangement, checks.modelled));
        found.addAll(RowChecks.of(stratum, arrangement));
        boolean varies = checks.fit.degreesOfFreedom() >= 2 && !checks.fit.isExact();
        if (varies) {
            found.add(checks.outliers());
            found.add(checks.normality());
            checks.variance(found);
        }
        return found;
    }

    /** Says what was carried in, and whether the trials agree with it. */
    static Check carried(CarriedNoise noise) {
        String what = "Judged with noise carried in from " + noise.from() + " (" + cv(noise.logSd()) + " on " + degrees(noise.degreesOfFreedom()) + ")";
        if (noise.differenceP().isEmpty()) {
            return new Check("carried-in noise", false, what + " alone: these trials have nothing to hold it against, so it must be the same device, workload and"
                    + " way of working.");
        }
        double p = noise.differenceP().getAsDouble();
        String own = "; the trials themselves show " + cv(noise.ownLogSd().orElseThrow()) + " on " + degrees(noise.ownDegreesOfFreedom()) + " (" + Phrases.p(p) + ")";
        return p < OrderChecks.ODD ? new Check("carried-in noise", true, what + own + ": that is not the same noise. Judge by these trials alone, or find out what changed"
                + " since.") : new Check("carried-in noise", false, what + own + ".");
    }

    private static String cv(double logSd) {
        return Phrases.number(coldproof.quantity.LogRatio.cvPercentOfLogSd(logSd)) + " %";
    }

    private static String degrees(double degreesOfFreedom) {
        boolean whole = degreesOfFreedom == Math.rint(degreesOfFreedom);
        return Counted.degreesOfFreedom(whole ? Long.toString((long) degreesOfFreedom) : Phrases.number(degreesOfFreedom));
    }

    private Check outliers() {
        int most = Math.min(MOST_SUSPECTS, Math.max(1, modelled.size() / 8));
        GeneralisedEsd esd = GeneralisedEsd.ofModel(modelled.scores(), modelled.columns(), most, SHAPE);
        if (esd.outliers() == 0) {
            return new Check("outliers", false, "No " + (stratum == Stratum.PAIRS ? "pair" : "trial") + " sticks out of the noise of the others"
                    + (modelled.size() < 15 ? "; among so few only a gross one would be seen" : "") + ".");
        }
        List<Integer> rows = esd.steps().subList(0, esd.outliers()).stream().map(GeneralisedEsd.Step::index).toList();
        String names = Phrases.list(rows.stream().map(modelled::name).toList());
        return new Check("outliers", true, (rows.size() == 1 ? "One value sticks" : rows.size() + " values stick") + " far out of the noise of the others: " + names
                + ". Nothing was dropped. Look in the journal for a cause (an update running, a bumped plug); a trial may be struck only with such a cause"
                + " written down, and run again. The randomisation p does not rest on the shape of the noise.");
    }

    private Check normality() {
        if (fit.degreesOfFreedom() < FEWEST_FOR_SHAPE) {
            return new Check("normality", false, "Too few trials to tell the shape of the noise; nothing speaks against the method, and nothing for it. The randomisation p does not need it.");
        }
        if (modelled.size() > MOST_FOR_SHAPE) {
            return new Check("normality", false, "Not looked for among more than " + MOST_FOR_SHAPE + " trials: the means of so many are normal whatever the shape of the noise.");
        }
        ShapiroWilk shapiro = ShapiroWilk.test(fit.residuals());
        if (shapiro.p() >= SHAPE) {
            return new Check("normality", false, "The noise has no shape that would trouble the t test (Shapiro-Wilk W = " + Phrases.number(shapiro.w()) + ", "
                    + Phrases.p(shapiro.p()) + ").");
        }
        return new Check("normality", true, "The noise is not normal (Shapiro-Wilk W = " + Phrases.number(shapiro.w()) + ", " + Phrases.p(shapiro.p())
                + "): a few trials far out, or two kinds of trial. Judge by the randomisation p as well, and look whether some background work ran in some trials.");
    }

    private void variance(List<Check> found) {
        if (stratum == Stratum.PAIRS) {
            return; // a difference has both levels in it
        }
        double[] residuals = fit.residuals();
        double[] baseline = IntStream.range(0, residuals.length).filter(i -> !modelled.isAgainst(i)).mapToDouble(i -> residuals[i]).toArray();
        double[] against = IntStream.range(0, residuals.length).filter(modelled::isAgainst).mapToDouble(i -> residuals[i]).toArray();
        if (Math.min(baseline.length, against.length) < FEWEST_FOR_SPREAD) {
            found.add(new Check("variance", false, "Too few trials to compare how much " + question.baseline() + " and " + question.against() + " vary."));
            return;
        }
        BrownForsythe spread = BrownForsythe.test(List.of(baseline, against));
        double ratio = Math.sqrt(meanSquare(against) / meanSquare(baseline));
        boolean warns = spread.p() < SHAPE;
        String size = question.against() + " varies " + Phrases.number(ratio) + " times as much as " + question.baseline() + " from run to run (" + Phrases.p(spread.p()) + ")";
        found.add(new Check("variance", warns, warns ? size + ". The test takes one noise for both: with equal numbers of trials it bears this well; with unequal"
                + " ones put more into the noisier level. It may also say something: a device at its limit often varies more." : "No difference in spread: " + size + "."));
    }

    private static double meanSquare(double[] values) {
        return DotProduct.of(values, values) / values.length;
    }
}
