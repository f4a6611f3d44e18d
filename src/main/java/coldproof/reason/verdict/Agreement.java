package coldproof.reason.verdict;

import coldproof.plan.Better;
import coldproof.stats.interval.BiasCorrectedBootstrap;
import coldproof.stats.interval.ConfidenceInterval;
import coldproof.stats.interval.Fieller;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;

/** Whether other ways of testing the same change come to the same answer: by the orders that could have been drawn, as a ratio of means, by resampling. */
final class Agreement {
    private static final int FEWEST_TO_RESAMPLE = 8; // values of a level; with fewer the bootstrap is too narrow
    private static final int RESAMPLES = 1999;

    private final Question question;
    private final boolean found;
    private final List<String> agree = new ArrayList<>();
    private final List<String> differ = new ArrayList<>();

    private Agreement(Question question, boolean found) {
        this.question = question;
        this.found = found;
    }

    /** Empty where there is no other way for these trials. */
    static Optional<Check> of(Question question, Stratum stratum, Arrangement arrangement, Analysis analysis, Optional<Randomisation> randomisation,
            RandomGenerator chance) {
        Agreement agreement = new Agreement(question, analysis.estimate().p() < question.falseAlarm());
        randomisation.filter(test -> test.smallestP() <= question.falseAlarm() && analysis.carried().isEmpty())
                .ifPresent(test -> agreement.note(test.p() <= question.falseAlarm(), "the randomisation test (" + Phrases.p(test.p()) + ")"));
        boolean plain = (stratum == Stratum.TRIALS || stratum == Stratum.PAIRS) && !new Analyst(question, arrangement).adjusts();
        if (plain && analysis.carried().isEmpty()) {
            agreement.ratioAndBootstrap(stratum, arrangement, chance);
        }
        return agreement.check();
    }

    private void ratioAndBootstrap(Stratum stratum, Arrangement arrangement, RandomGenerator chance) {
        boolean pairs = stratum == Stratum.PAIRS;
        List<Observation> first = pairs ? arrangement.pairs().stream().map(both -> both[0]).toList() : arrangement.of(question.baseline());
        List<Observation> second = pairs ? arrangement.pairs().stream().map(both -> both[1]).toList() : arrangement.of(question.against());
        double[] baseline = first.stream().mapToDouble(Observation::score).toArray();
        double[] against = second.stream().mapToDouble(Observation::score).toArray();
        double[] better = question.better() == Better.HIGHER ? against : baseline;
        double[] base = question.better() == Better.HIGHER ? baseline : against;
        double level = 1 - question.falseAlarm();
        Fieller ratio = pairs ? Fieller.ofPairs(better, base, level) : Fieller.ofGroups(better, base, level);
        if (ratio.interval().isBounded() && ratio.interval().low() > 0) {
            note("the ratio of means (Fieller)", new ConfidenceInterval(level, Math.log(ratio.interval().low()), Math.log(ratio.interval().high())));
        }
        double[] logBaseline = LogScores.of(first, question.better());
        double[] logAgainst = LogScores.of(second, question.better());
        if (Math.min(baseline.length, against.length) >= FEWEST_TO_RESAMPLE) {
            note("the bootstrap (BCa)", pairs ? BiasCorrectedBootstrap.ofMean(sorted(differences(logBaseline, logAgainst)), level, RESAMPLES, chance).interval()
                    : BiasCorrectedBootstrap.ofDifference(sorted(logBaseline), sorted(logAgainst), level, RESAMPLES, chance).interval());
        }
    }

    /** So that what is drawn does not hang on the order of the rows. */
    private static double[] sorted(double[] values) {
        Arrays.sort(values);
        return values;
    }

    private static double[] differences(double[] baseline, double[] against) {
        double[] differences = new double[baseline.length];
        for (int i = 0; i < differences.length; i++) {
            differences[i] = against[i] - baseline[i];
        }
        return differences;
    }

    private void note(String way, ConfidenceInterval log) {
        note(!log.contains(0), way + " (" + Phrases.signed(log.low()) + " to " + Phrases.signed(log.high()) + ")");
    }

    private void note(boolean seesChange, String way) {
        (seesChange == found ? agree : differ).add(way);
    }

    private Optional<Check> check() {
        if (agree.isEmpty() && differ.isEmpty()) {
            return Optional.empty();
        }
        String says = found ? "sees a change" : "sees no change";
        if (differ.isEmpty()) {
            return Optional.of(new Check("agreement", false, "The t test " + says + ", and so does " + Phrases.list(agree) + "."));
        }
        return Optional.of(new Check("agreement", true, "The t test " + says + "; " + Phrases.list(differ) + (differ.size() == 1 ? " does not" : " do not")
                + (agree.isEmpty() ? "" : ", " + Phrases.list(agree) + (agree.size() == 1 ? " does" : " do")) + ". The answer lies near the border: take it as open, and run more"
                + " rather than choose the test that pleases."));
    }
}
