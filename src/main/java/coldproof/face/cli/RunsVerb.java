package coldproof.face.cli;

import coldproof.job.RunsJob;
import coldproof.job.StudyView;
import coldproof.plan.Claim;
import coldproof.plan.Layout;
import coldproof.quantity.Dimension;
import coldproof.reason.sizing.CheapestStudy;
import coldproof.reason.sizing.SizingAnswer;
import coldproof.reason.sizing.SizingQuestion;
import coldproof.report.json.CheapestJson;
import coldproof.report.json.SizingJson;
import coldproof.report.text.CheapestText;
import coldproof.report.text.Figures;
import coldproof.report.text.SizingText;
import coldproof.stats.Tail;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import picocli.CommandLine.Model.CommandSpec;

/** {@code runs}: how many, or what so many can see; from the study's plan or from options alone. */
final class RunsVerb implements Verb {
    private static final int MOST = 1_000_000;
    /** What belongs to a question asked by options alone. */
    private static final List<String> OF_A_QUESTION = List.of("--session-noise", "--trials-per-session", "--power", "--false-alarm", "--tail", "--claim", "--matters",
            "--ratio", "--per-level");

    @Override
    public void describe(CommandSpec spec) {
        Options.value(spec, "--layout", "alternating|paired|sessions", "Arrangement (default: alternating); with it, --noise or --effect the answer comes from options alone, else from the study's plan.");
        Options.value(spec, "--effect", "PERCENT", "The true change (default: what matters; 0 for claim same).");
        Options.value(spec, "--noise", "PERCENT", "Run-to-run noise, as a coefficient of variation.");
        Options.value(spec, "--session-noise", "PERCENT", "Session-to-session noise (default: 0 %).");
        Options.value(spec, "--trials-per-session", "N", "Trials in a session (default: 4).");
        Options.value(spec, "--power", "PERCENT", "Chance to show it when it is there (default: 90 %).");
        Options.value(spec, "--false-alarm", "PERCENT", "Error rate (default: 5 %).");
        Options.value(spec, "--tail", "two|one", "Two-sided, or in one direction only (default: two).");
        Options.value(spec, "--claim", "gain|same", "What is to be shown (default: gain).");
        Options.value(spec, "--matters", "PERCENT", "The smallest change worth having: the margin of claim same (default: 3 %).");
        Options.value(spec, "--ratio", "NUMBER", "Units of the changed level for each of the baseline (default: 1).");
        Options.value(spec, "--per-level", "N", "Solve for power and smallest detectable change at this size.");
        CheapestOptions.describe(spec);
    }

    @Override
    public int run(Invocation call) {
        if (call.flag("--cheapest")) {
            CheapestStudy cheapest = RunsJob.cheapest(StudyView.read(call.study()), CheapestOptions.terms(call));
            call.answer(() -> CheapestJson.of(cheapest), () -> CheapestText.of(cheapest, call.streams().columns()));
            return ExitStatus.DONE;
        }
        boolean fromOptions = call.has("--layout") || call.has("--noise") || call.has("--effect");
        if (!fromOptions) {
            call.refuseUnheard(OF_A_QUESTION, "it goes with --layout; a study is sized as its plan says", "--layout beside it", "Leave it out, or change the plan.");
        }
        SizingAnswer answer = fromOptions ? RunsJob.ofQuestion(question(call)) : RunsJob.ofStudy(StudyView.read(call.study()));
        if (call.json()) {
            call.answer(SizingJson.of(answer));
        } else {
            call.answer(SizingText.of(answer, call.streams().columns()));
        }
        return ExitStatus.DONE;
    }

    private static SizingQuestion question(Invocation call) {
        Layout.Kind layout = Layout.Kind.valueOf(call.word("--layout", List.of("alternating", "paired", "sessions"), "alternating").toUpperCase(Locale.ROOT));
        call.need("--noise", "1.5%");
        double noise = call.percentBetween("--noise", -1e-12, 500, 0);
        double session = call.percentBetween("--session-noise", -1e-12, 500, 0);
        Claim claim = call.word("--claim", List.of("gain", "same"), "gain").equals("same") ? Claim.SAME : Claim.GAIN;
        double matters = call.percentBetween("--matters", 0, 1000, 3);
        double effect = call.quantity("--effect", Dimension.PERCENT).orElse(claim == Claim.GAIN ? matters : 0);
        if (!(effect > -100 && effect < 10_000)) {
            throw Invocation.refused("--effect", effect + " % is no change of a score", "above -100 %", "Correct the value of --effect.");
        }
        double power = call.percentBetween("--power", 0, 100, 90) / 100;
        double falseAlarm = call.percentBetween("--false-alarm", 0, 50, 5) / 100;
        if (power <= falseAlarm) {
            throw Invocation.refused("--power", Figures.given(100 * power) + " is no more than the false alarm of " + Figures.given(100 * falseAlarm),
                    "a chance well above it, such as 90 %", "Correct the value of --power.");
        }
        Tail tail = call.word("--tail", List.of("two", "one"), "two").equals("one") ? Tail.ONE : Tail.TWO;
        double ratio = call.number("--ratio", 1);
        if (!(ratio >= 0.001 && ratio <= 1000)) {
            throw Invocation.refused("--ratio", ratio + " is out of range", "from 0.001 to 1000", "Correct the value of --ratio.");
        }
        OptionalInt perLevel = call.whole("--per-level", 1, MOST);
        return new SizingQuestion(layout, claim, effect, noise, session, call.whole("--trials-per-session", 1, MOST).orElse(4), power, falseAlarm, tail, matters,
                ratio, perLevel);
    }
}
