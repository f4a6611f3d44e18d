package coldproof.reason.sizing;

import coldproof.plan.Claim;
import coldproof.quantity.LogRatio;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.stats.power.Allocation;
import coldproof.stats.power.DetectableEffect;
import coldproof.stats.power.Layout;
import coldproof.stats.power.Power;
import coldproof.stats.power.SampleSize;
import coldproof.stats.randomisation.RandomisationScheme;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** Solves for the number of units, or for the power and the smallest detectable effect of a given number. */
public final class Sizing {
    private final SizingQuestion question;
    private final Layout layout;
    private final coldproof.stats.power.Claim claim;

    private Sizing(SizingQuestion question) {
        this.question = question;
        this.layout = layout(question);
        this.claim = claim(question);
    }

    /**
     * Answers a question of size.
     *
     * @throws Refused if no number of units can show the claim
     */
    public static Size solve(SizingQuestion question) {
        return new Sizing(question).solve();
    }

    private static Layout layout(SizingQuestion question) {
        double run = LogRatio.logSdOfCv(question.runCvPercent());
        double session = LogRatio.logSdOfCv(question.sessionCvPercent());
        if (!(run + (question.layout() == coldproof.plan.Layout.Kind.SESSIONS ? session : 0) > 0)) {
            throw new Refused(Problem.of("the noise is 0 %", Place.named("noise"), "a noise above 0 %: every bench has some",
                    "Measure it: two trials of the same condition differ by it."));
        }
        return switch (question.layout()) {
            case ALTERNATING -> new Layout.TwoGroups(run);
            case PAIRED -> new Layout.Pairs(Math.sqrt(2) * run);
            case SESSIONS -> new Layout.Sessions(session, run, question.trialsPerSession());
        };
    }

    private static coldproof.stats.power.Claim claim(SizingQuestion question) {
        double effect = LogRatio.ofPercent(question.effectPercent()).log();
        return question.claim() == Claim.GAIN
                ? new coldproof.stats.power.Claim.Difference(effect, question.falseAlarm(), question.tail())
                : coldproof.stats.power.Claim.Equivalence.within(Math.log1p(question.mattersPercent() / 100), effect, question.falseAlarm());
    }

    private Size solve() {
        if (question.perLevel().isPresent()) {
            int baseline = question.perLevel().getAsInt();
            Allocation allocation = new Allocation(baseline, (int) Math.max(1, Math.rint(baseline * question.ratio())));
            return size(allocation, OptionalDouble.empty());
        }
        if (!claim.isReachable()) {
            throw new Refused(Problem.of(question.claim() == Claim.GAIN ? "no number of trials can show a change of 0 %"
                            : "a true change of " + question.effectPercent() + " % is not within what matters, so sameness cannot be shown",
                    Place.named("effect"), question.claim() == Claim.GAIN ? "a change other than 0 %" : "a change smaller than what matters",
                    "Give the smallest change worth having."));
        }
        SampleSize.Smallest smallest = smallest();
        return size(smallest.allocation(), smallest.powerWithOneFewer());
    }

    private SampleSize.Smallest smallest() {
        try {
            return SampleSize.smallest(claim, layout, layout.isPaired() ? 1 : question.ratio(), question.power());
        } catch (IllegalArgumentException tooMany) {
            throw new Refused(Problem.of("more trials than anybody can run would be needed", Place.named("effect"), "a larger effect or less noise",
                    "Look for a quieter workload, or settle for a larger change."));
        }
    }

    private Size size(Allocation allocation, OptionalDouble oneFewer) {
        double df = layout.degreesOfFreedom(allocation);
        List<Integer> perLevel = layout.isPaired() ? List.of(allocation.baseline()) : List.of(allocation.baseline(), allocation.against());
        RandomisationScheme orders = layout.isPaired() ? RandomisationScheme.pairs(allocation.baseline())
                : RandomisationScheme.groups(allocation.baseline(), allocation.against());
        if (!(df >= 1)) {
            return new Size(question.layout(), question.claim(), claimEffect(), perLevel, trials(allocation), df, Double.NaN, oneFewer, OptionalDouble.empty(),
                    OptionalDouble.empty(), orders.smallestP(), List.of(new Warning("no-degrees-of-freedom",
                            "One unit of each level leaves nothing to judge the noise by: no verdict is possible without noise carried in from a pilot.")));
        }
        double power = Power.of(claim, layout, allocation);
        OptionalDouble detectable = question.claim() == Claim.GAIN && question.power() > question.falseAlarm()
                ? OptionalDouble.of(DetectableEffect.smallest(layout, allocation, question.falseAlarm(), question.tail(), question.power()))
                : OptionalDouble.empty();
        OptionalDouble margin = question.claim() == Claim.SAME
                ? OptionalDouble.of(DetectableEffect.smallestMargin(layout, allocation, claimEffect(), question.falseAlarm(), question.power()))
                : OptionalDouble.empty();
        return new Size(question.layout(), question.claim(), claimEffect(), perLevel, trials(allocation), df, power, oneFewer, detectable, margin,
                orders.smallestP(), warnings(allocation, orders, power));
    }

    private double claimEffect() {
        return LogRatio.ofPercent(question.effectPercent()).log();
    }

    private long trials(Allocation allocation) {
        return switch (question.layout()) {
            case ALTERNATING -> allocation.total();
            case PAIRED -> 2L * allocation.baseline();
            case SESSIONS -> allocation.total() * question.trialsPerSession();
        };
    }

    private List<Warning> warnings(Allocation allocation, RandomisationScheme orders, double power) {
        List<Warning> warnings = new ArrayList<>();
        java.util.Optional<Warning> randomisation = randomisationWarning(orders, question.falseAlarm());
        if (randomisation.isPresent()) {
            warnings.add(randomisation.get());
        }
        if (power < question.power() - 1e-12) {
            warnings.add(new Warning("power-below-wanted", String.format(Locale.ROOT,
                    "With this size a change of %s %% is found %.0f times in 100, not %.0f.", number(question.effectPercent()), 100 * power, 100 * question.power())));
        }
        if (question.layout() == coldproof.plan.Layout.Kind.SESSIONS) {
            sessionWarnings(allocation, warnings);
        }
        return warnings;
    }

    /** The warning that a randomisation test cannot reach the false-alarm rate, where that is so. */
    public static java.util.Optional<Warning> randomisationWarning(RandomisationScheme orders, double falseAlarm) {
        if (orders.smallestP() <= falseAlarm + 1e-12) {
            return java.util.Optional.empty();
        }
        return java.util.Optional.of(new Warning("randomisation-cannot-reach", String.format(Locale.ROOT,
                "The smallest p this plan can give by randomisation alone is %.3f: however clear the data, it cannot reach %s %%. The t test can, "
                        + "but rests on normal scores. More sessions, pairs or blocks lower it.", orders.smallestP(), number(100 * falseAlarm))));
    }

    private void sessionWarnings(Allocation allocation, List<Warning> warnings) {
        Layout.Sessions sessions = (Layout.Sessions) layout;
        if (Math.min(allocation.baseline(), allocation.against()) < 2) {
            warnings.add(new Warning("one-session", "A level with one session cannot be told from its day: the verdict will stay undecided without noise carried in."));
        }
        if (question.sessionCvPercent() == 0) {
            warnings.add(new Warning("session-noise-unknown", "Session-to-session noise was taken as 0 %: if the days differ at all, more sessions are needed than this."));
        } else if (sessions.sessionLogSd() > sessions.sessionMeanLogSd() * 0.9) {
            warnings.add(new Warning("sessions-not-trials", "The sessions make nearly all of the noise: more trials in a session hardly help, more sessions do."));
        }
    }

    private static String number(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : String.format(Locale.ROOT, "%.2f", value);
    }
}
