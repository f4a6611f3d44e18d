package coldproof.face.cli;

import coldproof.job.LimiterJob;
import coldproof.job.LimiterQuestion;
import coldproof.job.LookRecord;
import coldproof.job.Machine;
import coldproof.job.StudyView;
import coldproof.plan.Better;
import coldproof.quantity.Dimension;
import coldproof.reason.limiter.KnownLimits;
import coldproof.reason.limiter.LimiterAnswer;
import coldproof.report.json.LimiterJson;
import coldproof.report.text.LimiterText;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;

/** {@code limiter}: what holds the device back, in the study or in a table of trials with traces. */
final class LimiterVerb implements Verb {
    @Override
    public void describe(CommandSpec spec) {
        Options.value(spec, "--trials", "FILE", "A table of trials from elsewhere, instead of the study.");
        Options.value(spec, "--trace-column", "COLUMN", "The column that names the log of each trial, relative to the table's folder (default: trace).");
        Options.values(spec, "--factor", "COLUMN", "A column that makes the condition; may stand several times.");
        Options.value(spec, "--metric", "COLUMN", "The column of the score (default: the only one that looks like it).");
        Options.value(spec, "--better", "higher|lower", "Which way of the metric is good (default: higher).");
        Options.value(spec, "--session", "COLUMN", "The column of the session (default: session).");
        Options.value(spec, "--order", "COLUMN", "The column of the run order (default: order).");
        Options.values(spec, "--map", "CHANNEL=COLUMN", "Say which column of the logs a channel is; may stand several times. A study remembers it.");
        Options.value(spec, "--temperature-limit", "TEMPERATURE", "The die's limit as the maker states it (default: found from the data).");
        Options.value(spec, "--power-limit", "POWER", "The long-term limit of package power likewise.");
        Options.value(spec, "--clock-limit", "CLOCK", "The highest clock likewise.");
    }

    @Override
    public int run(Invocation call) {
        KnownLimits limits = new KnownLimits(call.quantity("--temperature-limit", Dimension.TEMPERATURE), call.above0("--power-limit", Dimension.POWER),
                call.above0("--clock-limit", Dimension.CLOCK));
        if (!call.has("--trials")) {
            call.onlyWithTable("--trace-column", "--factor", "--metric", "--better", "--session", "--order");
            call.remark(LookRecord.ofAllTrials(call.study(), Machine.atHand()));
        }
        LimiterAnswer answer = call.has("--trials") ? LimiterJob.ofTable(question(call, limits), read -> {})
                : LimiterJob.ofStudy(StudyView.read(call.study()), call.texts("--map"), limits, read -> {});
        call.answer(() -> LimiterJson.of(answer), () -> LimiterText.of(answer, call.streams().columns()));
        return ExitStatus.DONE;
    }

    private static LimiterQuestion question(Invocation call, KnownLimits limits) {
        if (call.texts("--factor").isEmpty()) {
            throw Invocation.refused("--factor", "it is missing", "a column that makes the condition, such as ambient or fan", "Add --factor fan.");
        }
        Better better = call.word("--better", List.of("higher", "lower"), "higher").equals("higher") ? Better.HIGHER : Better.LOWER;
        return new LimiterQuestion(Invocation.pathOf("--trials", call.need("--trials", "trials.csv")), call.text("--trace-column").orElse("trace"),
                call.texts("--factor"), call.text("--metric"), better, call.text("--session"), call.text("--order"), call.texts("--map"), limits);
    }
}
