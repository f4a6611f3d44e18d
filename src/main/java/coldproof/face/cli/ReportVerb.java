package coldproof.face.cli;

import coldproof.job.IndexJob;
import coldproof.job.JournalJob;
import coldproof.job.LookRecord;
import coldproof.job.Machine;
import coldproof.job.ReportJob;
import coldproof.job.ReportJob.Format;
import coldproof.quantity.Counted;
import coldproof.report.export.TidyTable;
import coldproof.report.json.ExportJson;
import coldproof.report.json.JsonObject;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.function.IntConsumer;
import java.util.stream.Collectors;
import picocli.CommandLine.Model.CommandSpec;

/** {@code report}: one self-contained page about the study. */
final class ReportVerb implements Verb {
    private static final List<String> FORMATS = Arrays.stream(Format.values()).map(Format::word).toList();

    @Override
    public void describe(CommandSpec spec) {
        Options.value(spec, "--format", String.join("|", FORMATS), "How to write it (default: html).");
        Options.value(spec, "--out", "FILE", "Where to write it (default: report.html, .md or .txt in the study folder).");
        Options.value(spec, "--all", "DIR", "Instead: one page of all studies in this folder, with links to their reports (default name: index.html in it).");
        Options.value(spec, "--data", "DIR", "Instead: the data as tables in this folder, with verdicts, what each trace shows, and a dictionary; with --json as one document.");
        Options.flag(spec, "--names", "Show the names people signed with; they are left out otherwise.");
    }

    @Override
    public int run(Invocation call) {
        Format format = Format.values()[FORMATS.indexOf(call.word("--format", FORMATS, FORMATS.get(0)))];
        if (call.has("--all")) {
            return all(call, format);
        }
        call.remark(LookRecord.ofAllTrials(call.study(), Machine.atHand()));
        return call.has("--data") ? data(call) : one(call, format);
    }

    private static int one(Invocation call, Format format) {
        ReportJob.Request request = new ReportJob.Request(call.study(), format, call.path("--out"), call.flag("--names"));
        Path file = telling(call, progress -> ReportJob.write(request, progress));
        call.answer(() -> new JsonObject().put("report", file.toString()), () -> "Wrote " + file + "\n");
        return ExitStatus.DONE;
    }

    /** Does work that reads the traces, and tells how many are read. */
    private static <T> T telling(Invocation call, Function<IntConsumer, T> work) {
        int total = ReportJob.traces(call.study());
        try (ProgressLine progress = new ProgressLine(call.streams(), Machine.atHand().monotonicNanos())) {
            return work.apply(read -> progress.tell(() -> "read " + read + " of " + total + " traces"));
        }
    }

    private static int all(Invocation call, Format format) {
        Path folder = call.path("--all").orElseThrow();
        call.remark(IndexJob.looks(folder, Machine.atHand()));
        IndexJob.Made made = IndexJob.write(folder, format, call.path("--out"));
        int count = made.studies().size();
        call.answer(() -> new JsonObject().put("index", made.file().toString()).put("studies", count),
                () -> "Wrote " + made.file() + " with " + Counted.of(count, "study", "studies") + "\n");
        return ExitStatus.DONE;
    }

    private static int data(Invocation call) {
        List<TidyTable> tables = telling(call, progress -> ReportJob.data(call.study(), progress));
        List<Path> files = JournalJob.write(tables, call.path("--data").orElseThrow());
        call.answer(() -> ExportJson.of(tables), () -> files.stream().map(file -> "Wrote " + file + "\n").collect(Collectors.joining()));
        return ExitStatus.DONE;
    }
}
