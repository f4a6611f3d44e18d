package coldproof.face.cli;

import coldproof.job.Machine;
import coldproof.job.ReportJob;
import coldproof.report.json.JsonObject;
import java.nio.file.Path;
import picocli.CommandLine.Model.CommandSpec;

/** {@code report}: one self-contained page about the study. */
final class ReportVerb implements Verb {
    @Override
    public void describe(CommandSpec spec) {
        Options.value(spec, "--out", "FILE", "Where to write it (default: report.html in the study folder).");
        Options.flag(spec, "--names", "Show the names people signed with; they are left out otherwise.");
    }

    @Override
    public int run(Invocation call) {
        CountProgress progress = new CountProgress(call.streams(), Machine.atHand().monotonicNanos(), ReportJob.traces(call.study()), "traces");
        Path file = ReportJob.write(new ReportJob.Request(call.study(), call.path("--out"), call.flag("--names")), progress);
        progress.done();
        call.answer(new JsonObject().put("report", file.toString()), "Wrote " + file + "\n");
        return ExitStatus.DONE;
    }
}
