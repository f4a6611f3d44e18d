package coldproof.reason.verdict;

import coldproof.plan.Claim;
import coldproof.stats.Tail;
import coldproof.stats.distribution.StudentT;
import coldproof.stats.model.Estimate;
import coldproof.stats.power.Claim.Difference;
import coldproof.stats.power.Claim.Equivalence;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.function.IntToDoubleFunction;

/**
 * What is still needed to settle an undecided question: how many more units give the wanted power at the noise these trials show, by the exact power of the
 * test that was used. Asked in turn, until more than the present units are needed: to see a change of just what matters (or, for a claim of sameness, to rule
 * it out if there is none); the other of the two; and what the trials show, if that is true.
 */
final class Shortfall {
    private static final int MOST = 10_000; // more than anybody runs
    private static final double SMALLEST = 1e-6; // log change; a found change of exactly 0 could not be told from 0 by any number

    private final Question question;
    private final Stratum stratum;
    private final Arrangement arrangement;
    private final Estimate estimate;
    private final double changeAlarm; // what the intervals of this verdict stand for, also where several changes share it
    private final double samenessAlarm;

    private Shortfall(Question question, Stratum stratum, Arrangement arrangement, Estimate estimate, Ruler ruler) {
        this.question = question;
        this.stratum = stratum;
        this.arrangement = arrangement;
        this.estimate = estimate;
        this.changeAlarm = Math.min(0.5, StudentT.twoSidedP(ruler.reach().applyAsDouble(estimate), estimate.degreesOfFreedom()));
        this.samenessAlarm = StudentT.survival(ruler.equivalenceReach().applyAsDouble(estimate), estimate.degreesOfFreedom());
    }

    static MoreNeeded of(Question question, Stratum stratum, Arrangement arrangement, Analysis analysis, Ruler ruler) {
        return new Shortfall(question, stratum, arrangement, analysis.estimate(), ruler).needed();
    }

    /** One way to settle it: what is to be shown, and in words. */
    private record Aim(coldproof.stats.power.Claim claim, String words) {}

    private List<Aim> aims() {
        String matters = Phrases.percent(question.margin());
        Aim seeIt = new Aim(new Difference(question.margin(), changeAlarm, Tail.TWO), "see a change of " + matters);
        Aim ruleItOut = new Aim(Equivalence.within(question.margin(), 0, samenessAlarm), "rule out a change of " + matters + " if there is none");
        double found = Math.abs(estimate.logDifference());
        double toTell = question.claim() == Claim.GAIN ? found : Math.abs(found - question.margin());
        Aim whatIsSeen = new Aim(new Difference(Math.max(toTell, SMALLEST), changeAlarm, Tail.TWO),
                "settle it if the change is the " + Phrases.signed(estimate.logDifference()) + " found so far");
        return question.claim() == Claim.GAIN ? List.of(seeIt, ruleItOut, whatIsSeen) : List.of(ruleItOut, seeIt, whatIsSeen);
    }

    private MoreNeeded needed() {
        for (Aim aim : aims()) {
            int more = smallest(units -> power(aim.claim(), units));
            if (more > MOST) {
                return MoreNeeded.unknown("It cannot be settled at this noise: to " + aim.words() + " more than " + MOST + " further " + unit(2)
                        + " would be needed. Make the bench quieter, or ask for a larger change");
            }
            if (more > 0) {
                return told(more, aim);
            }
        }
        return MoreNeeded.unknown("These trials should have been enough by their number; a few more of each level will tell");
    }

    private MoreNeeded told(int more, Aim aim) {
        String chance = String.format(Locale.ROOT, "%.0f chances in 100 to %s at this noise", 100 * question.power(), aim.words());
        String units = "about " + more + " more " + unit(more);
        return switch (stratum) {
            case BETWEEN_SESSIONS -> new MoreNeeded(OptionalInt.of(more), OptionalInt.empty(), units + " of each level (" + chance
                    + "); more trials in the same sessions do not replace them");
            case WITHIN_SESSIONS -> {
                int sessions = smallest(added -> powerWithSessions(aim.claim(), added));
                yield sessions > MOST || sessions < 1 ? new MoreNeeded(OptionalInt.empty(), OptionalInt.of(more), units + " of each level (" + chance + ")")
                        : new MoreNeeded(OptionalInt.of(sessions), OptionalInt.of(more), units + " of each level, or " + sessions + " more "
                                + (sessions == 1 ? "session" : "sessions") + " like these (" + chance + ")");
            }
            case PAIRS -> new MoreNeeded(OptionalInt.empty(), OptionalInt.of(more), units + " (" + chance + ")");
            case TRIALS -> new MoreNeeded(OptionalInt.empty(), OptionalInt.of(more), units + " of each level (" + chance + ")");
        };
    }

    private String unit(int count) {
        String one = switch (stratum) {
            case BETWEEN_SESSIONS -> "session";
            case PAIRS -> "pair";
            case WITHIN_SESSIONS, TRIALS -> "trial";
        };
        return count == 1 ? one : one + "s";
    }

    /** The fewest added units that reach the power; above {@link #MOST} where none do. */
    private int smallest(IntToDoubleFunction power) {
        if (power.applyAsDouble(0) >= question.power()) {
            return 0;
        }
        int few = 0;
        int enough = 1;
        while (enough <= MOST && power.applyAsDouble(enough) < question.power()) {
            few = enough;
            enough *= 2;
        }
        if (enough > MOST) {
            return MOST + 1;
        }
        while (enough - few > 1) {
            int middle = (few + enough) / 2;
            if (power.applyAsDouble(middle) >= question.power()) {
                enough = middle;
            } else {
                few = middle;
            }
        }
        return enough;
    }

    private double power(coldproof.stats.power.Claim claim, int added) {
        double[] units = units();
        double before = 1 / units[0] + 1 / units[1];
        double after = 1 / (units[0] + added) + 1 / (units[1] + added);
        double gained = stratum == Stratum.PAIRS ? added : 2.0 * added;
        return powerOf(claim, estimate.standardError() * Math.sqrt(after / before), degreesOfFreedom() + gained);
    }

    /** Sessions that hold both levels: each brings its trials and costs the degree of freedom of its own mean. */
    private double powerWithSessions(coldproof.stats.power.Claim claim, int added) {
        double sessions = arrangement.sessions().size();
        double gained = arrangement.trials().size() / sessions - 1;
        return powerOf(claim, estimate.standardError() * Math.sqrt(sessions / (sessions + added)), degreesOfFreedom() + gained * added);
    }

    /** With noise carried in, further sessions bring degrees of freedom of their own: at least those count. */
    private double degreesOfFreedom() {
        if (stratum != Stratum.BETWEEN_SESSIONS) {
            return estimate.degreesOfFreedom();
        }
        double[] units = units();
        return Math.max(1, Math.min(estimate.degreesOfFreedom(), units[0] + units[1] - 2));
    }

    private static double powerOf(coldproof.stats.power.Claim claim, double standardError, double degreesOfFreedom) {
        return claim.power(standardError, Math.max(1, degreesOfFreedom));
    }

    private double[] units() {
        return switch (stratum) {
            case BETWEEN_SESSIONS -> new double[] {arrangement.sessionsWith(question.baseline()), arrangement.sessionsWith(question.against())};
            case PAIRS -> new double[] {arrangement.wholePairs(), arrangement.wholePairs()};
            case WITHIN_SESSIONS, TRIALS -> new double[] {arrangement.of(question.baseline()).size(), arrangement.of(question.against()).size()};
        };
    }
}
