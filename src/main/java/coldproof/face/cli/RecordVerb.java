package coldproof.face.cli;

import coldproof.job.BenchStudy;
import coldproof.job.Machine;
import coldproof.job.RecordJob;
import coldproof.job.RecordedTelemetry;
import coldproof.job.SafetyGate;
import coldproof.plan.Position;
import coldproof.quantity.Counted;
import coldproof.quantity.Dimension;
import coldproof.quantity.QuantityText;
import coldproof.report.json.JsonObject;
import coldproof.report.json.PlanJson;
import coldproof.report.text.Figures;
import coldproof.report.text.Harmless;
import coldproof.report.text.Wrap;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import picocli.CommandLine.Model.CommandSpec;

/** {@code record}: runs the workload of the next trials and logs them, once the safety gate is open. */
final class RecordVerb implements Verb {
    @Override
    public void describe(CommandSpec spec) {
        Options.value(spec, "--trials", "N|session|all", "How many of the next trials to run: a number, this session, or all (default: 1).");
        Options.value(spec, "--score-pattern", "REGEX", "Finds the score in the output: one (group) around the number. None: the wall time is the score.");
        Options.value(spec, "--at-most", "TIME", "Stop a trial that takes longer; it is not recorded (default: 24 h).");
        Options.value(spec, "--settle", "TIME", "Wait up to so long before each trial until the plan's start conditions hold, as sensors show them (default: not at all).");
        Options.value(spec, "--elsewhere", "FILE", Options.ELSEWHERE);
        SafetyOptions.describe(spec);
        SafetyOptions.describeGate(spec);
        Options.arguments(spec, "COMMAND", "0..*", "Program and arguments, after --; none: as the plan says. {factor} is replaced by the trial's level.");
    }

    @Override
    public int run(Invocation call) {
        double atMost = call.quantity("--at-most", Dimension.TIME).orElse(RecordJob.LONGEST_SECONDS);
        RecordJob.Request request = new RecordJob.Request(call.arguments(), call.text("--score-pattern"), atMost,
                call.quantity("--settle", Dimension.TIME).orElse(0), new RunningLine(call.streams()));
        String howMany = call.text("--trials").orElse("1");
        boolean session = howMany.equals("session");
        int most = session || howMany.equals("all") ? Integer.MAX_VALUE : most(howMany);
        Machine machine = Machine.atHand();
        SafetyGate.Pass pass = SafetyOptions.pass(call);
        Remarks remarks = new Remarks(call);
        List<JsonObject> recorded = new ArrayList<>();
        List<RecordedTelemetry> logs = new ArrayList<>();
        try (BenchStudy study = BenchStudy.open(call.study().toAbsolutePath(), call.path("--elsewhere"), machine)) {
            int begun = study.view().next().map(Position::session).orElse(0);
            while (recorded.size() < most && !(session && study.view().next().map(Position::session).orElse(0) != begun)) {
                Optional<RecordJob.Recorded> one = RecordJob.next(study, machine, request, pass, remarks::tell);
                if (one.isEmpty()) {
                    break;
                }
                recorded.add(say(call, study, one.get()));
                one.get().telemetry().ifPresent(logs::add);
                pass = pass.withoutReadings();
            }
            int remaining = study.view().toCome();
            String next = study.view().next().map(position -> call.next("trial " + position.number() + ", " + Harmless.line(position.condition())))
                    .orElseGet(() -> "All trials are done.\n" + call.next("coldproof verdict"));
            cost(logs).ifPresent(remarks::tell);
            study.elsewhere().forEach(call.messages()::println);
            call.answer(() -> new JsonObject().put("recorded", recorded).put("remaining", remaining).put("remarks", remarks.told()),
                    () -> next);
        }
        return ExitStatus.DONE;
    }

    private static int most(String howMany) {
        return QuantityText.whole(howMany.strip(), 1, 1_000_000).orElseThrow(() -> Invocation.refused("--trials", "\"" + howMany + "\" does not do",
                "a whole number from 1, session or all", "Correct the value of --trials."));
    }

    /** Tells each remark once, as soon as it is made: what comes after may fail. */
    private static final class Remarks {
        private final Invocation call;
        private final Set<String> told = new LinkedHashSet<>();

        Remarks(Invocation call) {
            this.call = call;
        }

        void tell(String remark) {
            if (told.add(remark)) {
                call.remark(List.of(remark));
            }
        }

        List<String> told() {
            return List.copyOf(told);
        }
    }

    private static JsonObject say(Invocation call, BenchStudy study, RecordJob.Recorded one) {
        if (!call.json()) {
            call.streams().out().print(Wrap.at(call.streams().columns(), "trial " + one.position().number() + " of " + study.view().sheet().positions().size() + "  session "
                    + one.position().session() + "  " + Harmless.line(one.position().condition()) + "  " + Figures.score(one.score()) + " "
                    + Harmless.line(study.view().plan().metric().unit())));
            call.streams().out().flush();
        }
        return PlanJson.position(one.position()).put("score", one.score()).put("elapsedSeconds", one.elapsedSeconds())
                .put("telemetry", one.telemetry().map(RecordVerb::telemetry));
    }

    private static JsonObject telemetry(RecordedTelemetry log) {
        return new JsonObject().put("file", log.file()).put("rows", log.rows()).put("sensors", log.sensors()).put("costPercent", log.costPercent());
    }

    /** What telemetry took from the workload: of several trials the worst. */
    private static Optional<String> cost(List<RecordedTelemetry> logs) {
        return logs.stream().max(Comparator.comparingDouble(RecordedTelemetry::costPercent)).map(worst -> "telemetry: " + worst.file() + ", " + worst.rows()
                + " rows of " + Counted.of(worst.sensors(), "sensor") + ", took at most " + Figures.fixed(worst.costPercent(), 2)
                + " % of one processor" + (logs.size() > 1 ? ", the most of " + logs.size() + " logs" : ""));
    }
}
