package coldproof.face.cli;

import coldproof.job.RunsJob;
import coldproof.job.StudyView;
import coldproof.reason.sizing.SizingAnswer;
import coldproof.report.json.JsonObject;
import coldproof.report.json.PlanJson;
import coldproof.report.text.Figures;
import coldproof.report.text.PlanText;
import java.util.Map;
import java.util.TreeMap;
import picocli.CommandLine.Model.CommandSpec;

/** {@code schedule}: the run sheet. */
final class ScheduleVerb implements Verb {
    @Override
    public void describe(CommandSpec spec) {}

    @Override
    public int run(Invocation call) {
        StudyView study = StudyView.read(call.study());
        Map<Integer, String> settled = new TreeMap<>();
        study.state().trials().forEach(trial -> settled.put(trial.position(), Figures.score(trial.score()) + " " + study.plan().metric().unit()));
        study.state().skipped().forEach((position, reason) -> settled.put(position, "skipped: " + reason));
        SizingAnswer runs = RunsJob.ofStudy(study);
        JsonObject json = PlanJson.sheet(study.sheet(), settled).put("frozen", study.frozen()).put("seed", study.plan().seed())
                .put("minutes", new JsonObject().put("total", runs.minutes().total()).put("outdoors", runs.minutes().outdoors()));
        String time = PlanText.time(runs.minutes().total(), runs.minutes().outdoors());
        call.answer(json, PlanText.sheet(study.plan(), study.sheet(), settled) + (time.isEmpty() ? "" : "\n" + time + "\n")
                + (study.frozen() ? "" : "\nThe plan is not frozen: this order still changes with it. Next: coldproof plan freeze\n"));
        return ExitStatus.DONE;
    }
}
