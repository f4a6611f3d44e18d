package coldproof.face.cli;

import coldproof.job.Machine;
import coldproof.job.TraceJob;
import coldproof.quantity.Dimension;
import coldproof.report.json.TraceJson;
import coldproof.report.text.TraceText;
import java.nio.file.Path;
import java.util.OptionalDouble;
import picocli.CommandLine.Model.CommandSpec;

/** {@code trace}: reads a log of telemetry and says what it shows. */
final class TraceVerb implements Verb {
    @Override
    public void describe(CommandSpec spec) {
        Options.values(spec, "--map", "CHANNEL=COLUMN", "Say which column a channel is; may stand several times. The rest is found from names and values. A study remembers it for its logs.");
        Options.value(spec, "--ambient", "TEMPERATURE", "Air around the device, where the log does not have it.");
        Options.arguments(spec, "FILE", "0..1", "The log: delimited text, plain or packed with gzip.");
    }

    @Override
    public int run(Invocation call) {
        if (call.arguments().isEmpty()) {
            throw Invocation.refused("FILE", "no log is named", "a log written as delimited text", "Run: coldproof trace log.csv");
        }
        Path file = Invocation.pathOf("FILE", call.arguments().get(0));
        OptionalDouble air = call.quantity("--ambient", Dimension.TEMPERATURE);
        TraceJob.Result result;
        try (ProgressLine progress = new ProgressLine(call.streams(), Machine.atHand().monotonicNanos())) {
            result = TraceJob.ofStudy(call.study(), file, call.texts("--map"), air, new ReadingProgress(progress, TraceJob.bytes(file)));
        }
        call.answer(() -> TraceJson.of(result.summary()),
                () -> TraceText.of(file.toString(), result.series(), result.summary(), call.streams().columns()));
        return ExitStatus.DONE;
    }
}
