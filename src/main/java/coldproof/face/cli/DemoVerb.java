package coldproof.face.cli;

import coldproof.job.ReportJob;
import coldproof.job.RunsJob;
import coldproof.job.StudyView;
import coldproof.job.VerdictJob;
import coldproof.job.demo.DemoJob;
import coldproof.reason.sizing.Size;
import coldproof.report.json.JsonObject;
import coldproof.report.json.VerdictJson;
import coldproof.report.text.Figures;
import coldproof.report.text.VerdictText;
import coldproof.report.text.Wrap;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;

/** {@code demo}: a whole study on simulated data, from plan to report. */
final class DemoVerb implements Verb {
    private static final int LABEL_COLUMNS = 9;

    @Override
    public void describe(CommandSpec spec) {
        Options.arguments(spec, "FOLDER", "0..1", "Where to make it (default: the folder named by --study, else coldproof-demo here).");
    }

    @Override
    public int run(Invocation call) {
        List<String> words = call.arguments();
        Path folder = DemoJob.make(words.isEmpty() ? call.path("--study") : Optional.of(Invocation.pathOf("coldproof demo", words.get(0))));
        StudyView study = StudyView.read(folder);
        List<VerdictJob.Answer> answers = VerdictJob.ofStudy(study);
        VerdictJob.Answer answer = answers.get(0);
        Path report = ReportJob.write(study, answers);
        call.answer(() -> new JsonObject().put("study", folder.toString()).put("report", report.toString()).put("simulated", true)
                .put("verdict", VerdictJson.of(answer.verdict(), answer.deviations())), () -> text(call, study, answer, report));
        return ExitStatus.DONE;
    }

    private static String text(Invocation call, StudyView study, VerdictJob.Answer answer, Path report) {
        int columns = call.streams().columns();
        StringBuilder out = new StringBuilder("A whole study in a second, on SIMULATED data. Step by step it would be:\n\n");
        step(out, columns, "plan", study.plan().title() + " Frozen before the first trial; its digest " + study.planDigest().substring(0, 12) + " is in the journal.");
        RunsJob.ofStudy(study).size().ifPresent(size -> step(out, columns, "runs", size(study, size)));
        step(out, columns, "schedule", "The order was drawn by lot: sessions " + order(study) + ".");
        step(out, columns, "log", "Every trial went to disk, with its telemetry, before the next began.");
        step(out, columns, "verdict", "The rule was fixed beforehand; this is what it says:");
        out.append('\n').append(VerdictText.of(answer.question(), answer.verdict(), answer.deviations(), columns));
        return out.append("\nStudy   ").append(study.folder()).append("\nReport  ").append(report).append("   (opens in any browser)\n").toString();
    }

    private static void step(StringBuilder out, int columns, String verb, String text) {
        Wrap.labelled(verb, LABEL_COLUMNS, text, columns, out);
    }

    private static String size(StudyView study, Size size) {
        return size.perLevel().get(0) + " + " + size.perLevel().get(1) + " sessions see a change of " + Figures.given(study.plan().mattersPercent()) + " with "
                + Figures.share(size.power()) + " power at the noise assumed.";
    }

    private static String order(StudyView study) {
        StringBuilder order = new StringBuilder();
        for (int session = 1; session <= study.sheet().sessions(); session++) {
            order.append(session == 1 ? "" : ", ").append(study.sheet().ofSession(session).get(0).levels().get(study.plan().compare().factor()));
        }
        return order.toString();
    }
}
