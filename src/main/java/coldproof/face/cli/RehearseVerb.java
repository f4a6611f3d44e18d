package coldproof.face.cli;

import coldproof.job.RehearseJob;
import coldproof.job.StudyView;
import coldproof.reason.rehearse.RehearsalReport;
import coldproof.reason.rehearse.RehearsalSettings;
import coldproof.report.json.RehearsalJson;
import coldproof.report.text.RehearsalText;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;

/** {@code rehearse}: the whole study simulated, thousands of times. */
final class RehearseVerb implements Verb {
    private static final int STUDIES = 10_000;
    private static final int MOST = 10_000_000;

    @Override
    public void describe(CommandSpec spec) {
        Options.value(spec, "--studies", "N", "Studies simulated for each story (default: " + STUDIES + ").");
        Options.value(spec, "--seed", "NUMBER", "The same seed gives the same studies (default: the plan's).");
    }

    @Override
    public int run(Invocation call) {
        StudyView study = StudyView.read(call.study());
        long seed = call.has("--seed") ? call.whole("--seed", 0, Integer.MAX_VALUE).getAsInt() : study.plan().seed();
        RehearsalSettings settings = new RehearsalSettings(call.whole("--studies", 1, MOST).orElse(STUDIES), seed);
        List<RehearsalReport> reports = RehearseJob.ofStudy(study, settings, line -> {
            call.messages().println(line);
            call.messages().flush();
        });
        call.answer(RehearsalJson.of(reports), RehearsalText.of(reports, call.streams().columns()));
        return ExitStatus.DONE;
    }
}
