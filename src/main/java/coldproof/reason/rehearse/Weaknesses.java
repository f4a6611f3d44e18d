package coldproof.reason.rehearse;

import coldproof.plan.Claim;
import coldproof.reason.rehearse.RehearsalReport.Outcome;
import coldproof.reason.sizing.SizingAnswer;
import coldproof.reason.sizing.Warning;
import coldproof.reason.verdict.Decision;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Where a rehearsed plan may fail: what the calculation warns of, and what the stories showed. */
final class Weaknesses {
    private static final double CLEARLY = 0.01; // of the studies: a rise of wrong decisions worth a sentence

    private Weaknesses() {}

    static List<Warning> of(Script script, SizingAnswer size, List<Outcome> outcomes) {
        List<Warning> found = new ArrayList<>();
        script.verdicts().obstacle().ifPresent(reason -> found.add(new Warning("no-verdict-possible", "However the scores come out, this plan cannot decide: "
                + reason + ".")));
        found.addAll(size.warnings());
        int changes = script.plan().compare().against().size();
        if (changes > 1) {
            found.add(new Warning("equal-shares", "Rehearsed with an equal share of the error rate for each of " + changes
                    + " changes; the verdict judges them together, which is a little sharper."));
        }
        boolean ofGain = script.plan().claim() == Claim.GAIN;
        Counts none = counts(outcomes, Story.Kind.NO_CHANGE);
        Counts decisive = ofGain ? counts(outcomes, Story.Kind.MATTERS) : none;
        double missed = script.plan().errors().missedGain();
        if (decisive.share(Decision.UNDECIDED) > missed + decisive.error(missed)) {
            found.add(new Warning("often-undecided", String.format(Locale.ROOT, "%s, the study stays undecided %.0f times in 100; at most %.0f were accepted.",
                    ofGain ? "When the gain just matters" : "When nothing changes", 100 * decisive.share(Decision.UNDECIDED), 100 * missed)));
        }
        if (ofGain && none.share(Decision.UNDECIDED) > 0.5) {
            found.add(new Warning("cannot-rule-out", String.format(Locale.ROOT, "When there is no gain, the study says so only %.0f times in 100 and stays "
                    + "undecided %.0f times: it can find a gain, but hardly rule one out.", 100 * none.share(Decision.FAIL),
                    100 * none.share(Decision.UNDECIDED))));
        }
        rise(found, "drift-misleads", none, counts(outcomes, Story.Kind.DRIFT),
                "a drift over the study that adds up to what matters. Counterbalanced orders and more, shorter blocks weaken it");
        rise(found, "lingering-misleads", none, counts(outcomes, Story.Kind.LINGERING),
                "noise that lingers from trial to trial. Longer pauses, or levels that alternate more often, weaken it");
        rise(found, "disturbance-misleads", none, counts(outcomes, Story.Kind.DISTURBED),
                "trials disturbed by something else. Close what runs beside the workload");
        return found;
    }

    private static Counts counts(List<Outcome> outcomes, Story.Kind kind) {
        return outcomes.stream().filter(outcome -> outcome.story().kind() == kind).findFirst().orElseThrow().counts();
    }

    private static void rise(List<Warning> found, String code, Counts calm, Counts rough, String cause) {
        double error = Math.hypot(calm.error(calm.wrongShare()), rough.error(rough.wrongShare()));
        if (rough.wrongShare() > calm.wrongShare() + Math.max(CLEARLY, error)) {
            found.add(new Warning(code, String.format(Locale.ROOT, "Wrong decisions rise from %.1f to %.1f in 100 with %s.", 100 * calm.wrongShare(),
                    100 * rough.wrongShare(), cause)));
        }
    }
}
