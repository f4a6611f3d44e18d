package coldproof.face.cli;

import coldproof.job.NoiseJob;
import coldproof.job.StudyView;
import coldproof.reason.noise.NoiseReading;
import coldproof.reason.sizing.PilotAdvice;
import coldproof.report.json.NoiseJson;
import coldproof.report.json.PilotJson;
import coldproof.report.text.NoiseText;
import coldproof.report.text.PilotText;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;

/** {@code noise}: run-to-run and session-to-session noise of this study, of several, or of a table. */
final class NoiseVerb implements Verb {
    @Override
    public void describe(CommandSpec spec) {
        Options.arguments(spec, "STUDY", "0..*", "Study folders to learn from together (default: this study).");
        Options.flag(spec, "--advise", "How large a pilot should be for this study's plan, and what its uncertain noise does to the power.");
        Options.values(spec, "--trials", "FILE", "A table of trials, instead of studies; several are pooled.");
        Options.value(spec, "--metric", "COLUMN", "The column of the score.");
        Options.value(spec, "--session", "COLUMN", "The column of the session.");
        Options.values(spec, "--factor", "COLUMN", "A column that makes the condition; may stand several times.");
    }

    @Override
    public int run(Invocation call) {
        if (call.flag("--advise")) {
            PilotAdvice advice = NoiseJob.advice(StudyView.read(call.study()));
            call.answer(() -> PilotJson.of(advice), () -> PilotText.of(advice, call.streams().columns()));
            return ExitStatus.DONE;
        }
        NoiseReading noise;
        if (call.has("--trials")) {
            if (!call.arguments().isEmpty()) {
                throw Invocation.refused("coldproof noise", "both studies and tables are named", "either study folders or --trials", "Ask for one after the other.");
            }
            List<Path> files = call.texts("--trials").stream().map(file -> Invocation.pathOf("--trials", file)).toList();
            noise = NoiseJob.ofTables(files, call.need("--metric", "score"), call.text("--session"), call.texts("--factor"));
        } else {
            call.onlyWithTable("--metric", "--session", "--factor");
            List<String> named = call.arguments();
            List<Path> studies = named.isEmpty() ? List.of(call.study()) : named.stream().map(name -> Invocation.pathOf("STUDY", name)).toList();
            noise = NoiseJob.ofStudies(studies);
        }
        call.answer(() -> NoiseJson.of(noise), () -> NoiseText.of(noise, call.streams().columns()));
        return ExitStatus.DONE;
    }
}
