package coldproof.face.cli;

import coldproof.job.LookRecord;
import coldproof.job.Machine;
import coldproof.job.NoiseJob;
import coldproof.job.StudyView;
import coldproof.job.TrialsQuestion;
import coldproof.job.VerdictJob;
import coldproof.plan.Better;
import coldproof.plan.Change;
import coldproof.plan.Claim;
import coldproof.plan.NoiseAssumption;
import coldproof.reason.verdict.Compared;
import coldproof.reason.verdict.Comparisons;
import coldproof.reason.verdict.Decision;
import coldproof.report.json.VerdictJson;
import coldproof.report.text.ComparisonsText;
import coldproof.report.text.VerdictText;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import picocli.CommandLine.Model.CommandSpec;

/** {@code verdict}: judges the study, or a table of trials. */
final class VerdictVerb implements Verb {
    private static final double MATTERS_PERCENT = 3;
    private static final double FALSE_ALARM_PERCENT = 5;

    @Override
    public void describe(CommandSpec spec) {
        Options.value(spec, "--trials", "FILE", "A table of trials from elsewhere, instead of the study.");
        Options.value(spec, "--metric", "COLUMN", "The column of the score.");
        Options.value(spec, "--better", "higher|lower", "Which way of the metric is good.");
        Options.value(spec, "--factor", "COLUMN", "The column of the compared factor.");
        Options.value(spec, "--baseline", "LEVEL", "The level compared with.");
        Options.values(spec, "--against", "LEVEL", "The changed level; may stand several times (default: every other level).");
        Options.value(spec, "--change", "session|trial", "How often the factor was set (default: found from the table).");
        Options.value(spec, "--session", "COLUMN", "The column of the session.");
        Options.value(spec, "--order", "COLUMN", "The column of the run order.");
        Options.value(spec, "--pair", "COLUMN", "The column of the pair.");
        Options.values(spec, "--where", "COLUMN=VALUE", "Keep only rows with this value; may stand several times.");
        Options.values(spec, "--adjust-for", "COLUMN", "A factor to adjust for; may stand several times.");
        Options.value(spec, "--matters", "PERCENT", "The smallest change worth having (default: 3 %).");
        Options.value(spec, "--claim", "gain|same", "What is to be shown (default: gain).");
        Options.value(spec, "--false-alarm", "PERCENT", "Two-sided error rate (default: 5 %).");
        Options.values(spec, "--carry-noise", "SOURCE", "Pool in the noise of a study folder, a table, or what the plan states (plan); may stand several times.");
    }

    @Override
    public int run(Invocation call) {
        boolean table = call.has("--trials");
        if (!table) {
            call.onlyWithTable("--better", "--factor", "--baseline", "--against", "--change", "--order", "--pair", "--where", "--adjust-for", "--matters", "--claim",
                    "--false-alarm");
            if (!call.has("--carry-noise")) {
                call.onlyWithTable("--metric", "--session"); // else they say how a table of carried noise is read
            }
        }
        Optional<StudyView> study = table ? Optional.empty() : Optional.of(StudyView.read(call.study()));
        List<VerdictJob.Answer> answers = table ? VerdictJob.ofTable(question(call)) : VerdictJob.ofStudy(study.get(), carried(call, study.get()));
        List<Compared> compared = answers.stream().map(VerdictJob.Answer::compared).toList();
        List<String> deviations = answers.get(0).deviations();
        Optional<String> simulated = study.flatMap(view -> view.state().simulated());
        call.answer(() -> VerdictJson.of(compared, deviations).put("simulated", simulated.orElse(null)),
                () -> study.map(view -> VerdictText.heading(view.plan(), view.state().simulated(), call.streams().columns())).orElse("")
                        + ComparisonsText.of(compared, deviations, call.streams().columns()));
        if (study.isPresent() && !call.has("--carry-noise")) {
            call.remark(LookRecord.write(study.get(), answers, Machine.atHand()));
        }
        return status(Comparisons.deciding(compared).verdict().decision());
    }

    static int status(Decision decision) {
        return switch (decision) {
            case PASS -> ExitStatus.DONE;
            case FAIL -> ExitStatus.FAIL;
            case UNDECIDED -> ExitStatus.UNDECIDED;
        };
    }

    /** The changed levels; none named means all. */
    private static List<String> against(Invocation call) {
        List<String> against = call.texts("--against").stream().distinct().toList();
        if (against.contains(call.need("--baseline", "auto"))) {
            throw Invocation.refused("--against", "the baseline cannot be compared with itself", "another level", "Correct --against or --baseline.");
        }
        return against;
    }

    private static Optional<NoiseAssumption> carried(Invocation call, StudyView study) {
        List<String> sources = call.texts("--carry-noise");
        if (sources.equals(List.of("plan"))) {
            return Optional.of(VerdictJob.plannedNoise(study));
        }
        return carried(call, List.of());
    }

    private static Optional<NoiseAssumption> carried(Invocation call, List<String> factors) {
        List<Path> sources = call.texts("--carry-noise").stream().map(source -> Invocation.pathOf("--carry-noise", source)).toList();
        return sources.isEmpty() ? Optional.empty() : Optional.of(NoiseJob.carried(sources, call.text("--metric"), call.text("--session"), factors));
    }

    private static TrialsQuestion question(Invocation call) {
        Better better = call.word("--better", List.of("higher", "lower"), call.need("--better", "higher")).equals("higher") ? Better.HIGHER : Better.LOWER;
        Optional<Change> change = call.has("--change")
                ? Optional.of(call.word("--change", List.of("session", "trial"), "").equals("session") ? Change.PER_SESSION : Change.PER_TRIAL) : Optional.empty();
        double matters = call.percentBetween("--matters", 0, 1000, MATTERS_PERCENT);
        double falseAlarm = call.percentBetween("--false-alarm", 0, 50, FALSE_ALARM_PERCENT) / 100;
        Claim claim = call.word("--claim", List.of("gain", "same"), "gain").equals("same") ? Claim.SAME : Claim.GAIN;
        List<TrialsQuestion.Where> where = new ArrayList<>();
        for (String condition : call.texts("--where")) {
            int equals = condition.indexOf('=');
            if (equals < 1) {
                throw Invocation.refused("--where", "\"" + condition + "\" has no =", "COLUMN=VALUE", "Write it as: --where fan=auto");
            }
            where.add(new TrialsQuestion.Where(condition.substring(0, equals).strip(), condition.substring(equals + 1).strip()));
        }
        return new TrialsQuestion(Invocation.pathOf("--trials", call.need("--trials", "trials.csv")), call.need("--metric", "score"), better,
                call.need("--factor", "fan"), call.need("--baseline", "auto"), against(call), change, call.text("--session"),
                call.text("--order"), call.text("--pair"), where, call.texts("--adjust-for"), matters, claim, falseAlarm,
                carried(call, Stream.concat(Stream.of(call.need("--factor", "fan")), call.texts("--adjust-for").stream()).toList()));
    }
}
