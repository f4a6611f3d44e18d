package coldproof.face.cli;

import coldproof.face.dialogue.Lines;
import coldproof.face.dialogue.PlanDialogue;
import coldproof.job.Machine;
import coldproof.job.PlanDraft;
import coldproof.job.PlanJob;
import coldproof.job.ReadyPlans;
import coldproof.job.RunsJob;
import coldproof.job.StudyView;
import coldproof.plan.Change;
import coldproof.plan.Claim;
import coldproof.plan.Errors;
import coldproof.plan.Layout;
import coldproof.plan.Level;
import coldproof.plan.Metric;
import coldproof.plan.NoiseAssumption;
import coldproof.quantity.Celsius;
import coldproof.quantity.ConstantWord;
import coldproof.quantity.Counted;
import coldproof.quantity.Dimension;
import coldproof.quantity.QuantityText;
import coldproof.quantity.QuantityText.Bare;
import coldproof.reason.sizing.SizingAnswer;
import coldproof.report.json.JsonObject;
import coldproof.report.json.PlanJson;
import coldproof.report.json.SizingJson;
import coldproof.report.text.PlanText;
import coldproof.report.text.SizingText;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.Model.CommandSpec;

/** {@code plan new|check|show|freeze}. */
final class PlanVerb implements Verb {
    private static final List<String> STEPS = List.of("new", "check", "show", "freeze");
    private static final List<String> DRAFT = List.of("--title", "--device", "--metric", "--unit", "--better", "--factor", "--baseline", "--against", "--change",
            "--matters", "--claim", "--noise", "--session-noise", "--layout", "--per-level", "--trials-per-session", "--trial-time", "--soak", "--seed");

    @Override
    public void describe(CommandSpec spec) {
        Options.arguments(spec, "new|check|show|freeze", "1", "What to do with the plan.");
        Options.flag(spec, "--guided", "new: be asked step by step; also without any option in a terminal.");
        Options.value(spec, "--from", "NAME", "new: copy a ready plan: " + String.join(", ", ReadyPlans.names()) + ".");
        Options.value(spec, "--follow", "DIR", "new: go on from an earlier study: its plan, with the noise it measured and a new run order.");
        Options.value(spec, "--title", "TEXT", "new: the question in a sentence.");
        Options.value(spec, "--device", "TEXT", "new: what is tested.");
        Options.value(spec, "--metric", "NAME", "new: what is measured, such as \"render rate\".");
        Options.value(spec, "--unit", "UNIT", "new: its unit, such as frames/s.");
        Options.value(spec, "--better", "higher|lower", "new: which way is good (default: higher).");
        Options.value(spec, "--factor", "NAME", "new: what is changed, such as fan.");
        Options.value(spec, "--baseline", "LEVEL", "new: the level compared with; LEVEL=SETTING gives its setting, such as room=21C.");
        Options.value(spec, "--against", "LEVEL", "new: the changed level, likewise.");
        Options.value(spec, "--change", "session|trial", "new: how often the factor is set (default: trial).");
        Options.value(spec, "--matters", "PERCENT", "new: the smallest change worth having (default: 3 %).");
        Options.value(spec, "--claim", "gain|same", "new: what is to be shown (default: gain).");
        Options.value(spec, "--noise", "PERCENT", "new: run-to-run noise, as a coefficient of variation.");
        Options.value(spec, "--session-noise", "PERCENT", "new: session-to-session noise.");
        Options.value(spec, "--layout", "alternating|paired|sessions", "new: the arrangement (default: sessions for a factor set per session).");
        Options.value(spec, "--per-level", "N", "new: sessions, trials or pairs (default: as many as the noise asks for).");
        Options.value(spec, "--trials-per-session", "N", "new: trials of each level in a session (default: 4).");
        Options.value(spec, "--trial-time", "TIME", "new: how long a trial takes.");
        Options.value(spec, "--soak", "TIME", "new: how long the device needs to settle.");
        Options.value(spec, "--seed", "NUMBER", "new: drives the run order (default: 1).");
        Options.value(spec, "--reason", "TEXT", "freeze: why a frozen plan is changed.");
    }

    @Override
    public int run(Invocation call) {
        String step = call.arguments().get(0);
        if (!STEPS.contains(step)) {
            throw Invocation.wrongWord("coldproof plan", step, STEPS);
        }
        return switch (step) {
            case "new" -> create(call);
            case "check" -> check(call);
            case "show" -> show(call);
            default -> freeze(call);
        };
    }

    private static int guided(Invocation call) {
        Streams streams = call.streams();
        Lines lines = Lines.of(streams.in(), call.json() ? call.messages() : streams.out(), streams.columns(), streams.interactive());
        Optional<Path> file = PlanDialogue.run(call.study(), lines);
        call.answer(() -> new JsonObject().put("plan", file.map(Path::toString)), () -> file.map(written -> "Wrote " + written
                + "\n" + call.next("coldproof plan check")).orElse("Nothing was written.\n"));
        return ExitStatus.DONE;
    }

    private static int create(Invocation call) {
        String whole = call.has("--from") ? "--from" : "--follow";
        if (call.has(whole)) {
            call.refuseUnheard(DRAFT, "it says what a plan from options holds, and " + whole + " takes a whole plan", "one of the two",
                    "Leave it out, and change the file that is written.");
        }
        if (call.flag("--guided") || call.streams().interactive() && !call.has("--from") && !call.has("--factor") && !call.has("--follow") && !call.json()) {
            return guided(call);
        }
        String text = call.has("--from") ? ReadyPlans.text(call.need("--from", "chilled-air"))
                : PlanJob.text(call.path("--follow").map(PlanJob::following).orElseGet(() -> draft(call).plan()));
        Path file = PlanJob.create(call.study(), text);
        call.answer(() -> new JsonObject().put("plan", file.toString()), () -> "Wrote " + file + "\n" + call.next("read it, then run: coldproof plan check"));
        return ExitStatus.DONE;
    }

    private static PlanDraft draft(Invocation call) {
        if (!call.has("--factor")) {
            throw Invocation.refused("coldproof plan new", "neither a ready plan nor a question is given", "--from NAME with one of: "
                    + String.join(", ", ReadyPlans.names()) + "; or --factor, --baseline, --against and --metric",
                    "Run coldproof in a terminal without words to be asked step by step.");
        }
        Change change = call.word("--change", List.of("session", "trial"), "trial").equals("session") ? Change.PER_SESSION : Change.PER_TRIAL;
        String kindWord = call.word("--layout", List.of("alternating", "paired", "sessions"), change == Change.PER_SESSION ? "sessions" : "alternating");
        Layout.Kind kind = Layout.Kind.valueOf(kindWord.toUpperCase(Locale.ROOT));
        Optional<NoiseAssumption> noise = noise(call);
        Metric metric = PlanDraft.metric(call.need("--metric", "\"render rate\""), call.text("--unit").orElse(""),
                call.word("--better", List.of("higher", "lower"), "higher").equals("higher"));
        Level baseline = level(call.need("--baseline", "room=21C"));
        Level against = level(call.need("--against", "chilled=-6C"));
        String factor = call.need("--factor", "ambient");
        double matters = call.percentBetween("--matters", 0, 1000, 3);
        Claim claim = call.word("--claim", List.of("gain", "same"), "gain").equals("same") ? Claim.SAME : Claim.GAIN;
        int trials = call.whole("--trials-per-session", 1, 1000).orElse(4);
        int perLevel = call.whole("--per-level", 1, 10_000).orElseGet(() -> RunsJob.perLevelFor(kind, change, claim, matters, noise, trials));
        String title = call.text("--title").orElse("Does " + factor + " " + against.name() + " change the " + metric.name() + " against " + baseline.name() + "?");
        OptionalDouble trialSeconds = call.quantity("--trial-time", Dimension.TIME);
        return new PlanDraft(title, call.text("--device").orElse("device under test"), metric, factor, baseline, against, change, matters, claim, noise,
                new Errors(0.05, 0.1), kind, perLevel, trials, trialSeconds, call.quantity("--soak", Dimension.TIME).orElse(0),
                call.whole("--seed", 0, Integer.MAX_VALUE).orElse(1));
    }

    private static Optional<NoiseAssumption> noise(Invocation call) {
        if (!call.has("--noise") && !call.has("--session-noise")) {
            return Optional.empty();
        }
        call.need("--noise", "1.5%");
        return Optional.of(new NoiseAssumption(call.percentBetween("--noise", -1e-9, 500, 0), call.percentBetween("--session-noise", -1e-9, 500, 0),
                OptionalDouble.empty(), OptionalDouble.empty(), "guess"));
    }

    /** {@code room=21C}: a name, and after the sign what is set. */
    private static Level level(String text) {
        int equals = text.indexOf('=');
        if (equals < 1) {
            return Level.named(text.strip());
        }
        String setting = text.substring(equals + 1).strip();
        try {
            double celsius = QuantityText.read(setting, Dimension.TEMPERATURE, Bare.REFUSED);
            return new Level(text.substring(0, equals).strip(), setting, Optional.of(new Celsius(celsius)));
        } catch (QuantityText.Unreadable words) {
            return new Level(text.substring(0, equals).strip(), setting, Optional.empty());
        }
    }

    private static int check(Invocation call) {
        StudyView study = StudyView.read(call.study());
        SizingAnswer runs = RunsJob.ofStudy(study);
        call.answer(() -> PlanJson.plan(study.plan(), study.frozen(), study.planDigest()).put("runs", SizingJson.of(runs)),
                () -> "The plan is consistent: " + Counted.of(study.sheet().positions().size(), "trial") + " in " + Counted.of(study.sheet().sessions(), "session") + ".\n"
                        + SizingText.of(runs, call.streams().columns()) + (study.frozen() ? "" : call.next("coldproof plan freeze")));
        return ExitStatus.DONE;
    }

    private static int show(Invocation call) {
        StudyView study = StudyView.read(call.study());
        call.answer(() -> PlanJson.plan(study.plan(), study.frozen(), study.planDigest()),
                () -> PlanText.of(study.plan(), study.frozen(), study.planDigest(), call.streams().columns()));
        return ExitStatus.DONE;
    }

    private static int freeze(Invocation call) {
        PlanJob.Freezing done = PlanJob.freeze(call.study(), Machine.atHand(), call.text("--reason"));
        String digest = StudyView.read(call.study()).planDigest();
        String text = switch (done) {
            case FROZEN -> "Frozen. The digest " + digest.substring(0, 12) + " is in the journal.\n" + call.next("coldproof schedule, then coldproof log");
            case FROZEN_BEFORE -> "This plan was frozen before; nothing changed.\n";
            case AMENDED -> "The changed plan was taken in, with its reason, as a deviation.\n";
        };
        call.answer(() -> new JsonObject().put("digest", digest).put("freezing", ConstantWord.of(done)), () -> text);
        return ExitStatus.DONE;
    }
}
