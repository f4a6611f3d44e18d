package coldproof.face.cli;

import coldproof.job.BenchFile;
import coldproof.job.RehearseJob;
import coldproof.job.StudyView;
import coldproof.quantity.Dimension;
import coldproof.reason.rehearse.LimiterReport;
import coldproof.reason.rehearse.RehearsalReport;
import coldproof.reason.rehearse.RehearsalSettings;
import coldproof.reason.rehearse.bench.BenchParameters;
import coldproof.report.json.LimiterReportJson;
import coldproof.report.json.RehearsalJson;
import coldproof.report.text.LimiterReportText;
import coldproof.report.text.RehearsalText;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;

/** {@code rehearse}: the whole study simulated, thousands of times. */
final class RehearseVerb implements Verb {
    private static final int STUDIES = 10_000;
    private static final int LIMITER_STUDIES = 60;
    private static final int MOST = 10_000_000;

    @Override
    public void describe(CommandSpec spec) {
        Options.value(spec, "--studies", "N", "Studies simulated for each story (default: " + STUDIES + ").");
        Options.value(spec, "--seed", "NUMBER", "The same seed gives the same studies (default: the plan's).");
        Options.flag(spec, "--limiters", "Run the plan with full telemetry on invented devices: how often is the right limiter named? (default: "
                + LIMITER_STUDIES + " studies)");
        Options.value(spec, "--bench", "FILE", "A simulated bench like the study's own (default: bench.yaml in the study, where there is one).");
        Options.values(spec, "--learn", "TRACE", "Fit such a bench to a pilot's trace, write it to bench.yaml and rehearse on it; may stand several times.");
        Options.value(spec, "--ambient", "TEMPERATURE", "learn: air of the traces, where they do not have it.");
    }

    @Override
    public int run(Invocation call) {
        StudyView study = StudyView.read(call.study());
        long seed = call.has("--seed") ? call.whole("--seed", 0, Integer.MAX_VALUE).getAsInt() : study.plan().seed();
        LiveLine progress = new LiveLine(call.streams());
        if (call.flag("--limiters")) {
            LimiterReport report = RehearseJob.limiters(study, new RehearsalSettings(call.whole("--studies", 1, MOST).orElse(LIMITER_STUDIES), seed),
                    progress::show);
            progress.end();
            call.answer(() -> LimiterReportJson.of(report), () -> LimiterReportText.of(report, call.streams().columns()));
            return ExitStatus.DONE;
        }
        RehearsalSettings settings = new RehearsalSettings(call.whole("--studies", 1, MOST).orElse(STUDIES), seed, bench(call, study));
        List<RehearsalReport> reports = RehearseJob.ofStudy(study, settings, progress::show);
        progress.end();
        call.answer(() -> RehearsalJson.of(reports), () -> RehearsalText.of(reports, call.streams().columns()));
        return ExitStatus.DONE;
    }

    private static Optional<BenchParameters> bench(Invocation call, StudyView study) {
        if (!call.texts("--learn").isEmpty()) {
            List<Path> traces = call.texts("--learn").stream().map(name -> Invocation.pathOf("--learn", name)).toList();
            BenchFile learnt = BenchFile.learn(call.study(), study.plan().device(), traces, call.quantity("--ambient", Dimension.TEMPERATURE));
            call.messages().println("wrote " + learnt.file());
            return Optional.of(learnt.sketch().parameters());
        }
        return call.path("--bench").map(BenchFile::read).or(() -> BenchFile.of(call.study())).map(file -> file.sketch().parameters());
    }
}
