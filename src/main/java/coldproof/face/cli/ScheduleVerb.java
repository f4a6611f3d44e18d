package coldproof.face.cli;

import coldproof.job.Machine;
import coldproof.job.OutdoorJob;
import coldproof.job.RunsJob;
import coldproof.job.StudyView;
import coldproof.reason.safety.OutdoorStay;
import coldproof.reason.sizing.SizingAnswer;
import coldproof.report.json.CautionJson;
import coldproof.report.json.JsonObject;
import coldproof.report.json.PlanJson;
import coldproof.report.text.Figures;
import coldproof.report.text.OutdoorText;
import coldproof.report.text.PlanText;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import picocli.CommandLine.Model.CommandSpec;

/** {@code schedule}: the run sheet, with no session in the open air that cold, daylight or battery do not allow. */
final class ScheduleVerb implements Verb {
    @Override
    public void describe(CommandSpec spec) {
        SafetyOptions.describeDay(spec);
    }

    @Override
    public int run(Invocation call) {
        StudyView study = StudyView.read(call.study());
        Instant now = Machine.atHand().wall().instant();
        List<OutdoorStay> stays = OutdoorJob.stays(study, SafetyOptions.day(call), now);
        if (!study.frozen()) {
            OutdoorJob.refuseWhatDoesNotFit(stays);
        }
        Map<Integer, String> settled = new TreeMap<>();
        study.state().trials().forEach(trial -> settled.put(trial.position(), Figures.score(trial.score()) + " " + study.plan().metric().unit()));
        study.state().skipped().forEach((position, reason) -> settled.put(position, "skipped: " + reason));
        SizingAnswer runs = RunsJob.ofStudy(study);
        call.answer(() -> json(study, settled, runs, stays), () -> text(study, settled, runs, stays, call));
        return ExitStatus.DONE;
    }

    private static JsonObject json(StudyView study, Map<Integer, String> settled, SizingAnswer runs, List<OutdoorStay> stays) {
        return PlanJson.sheet(study.sheet(), settled).put("frozen", study.frozen()).put("seed", study.plan().seed())
                .put("minutes", new JsonObject().put("total", runs.minutes().total()).put("outdoors", runs.minutes().outdoors()))
                .put("outdoorSessions", stays.stream().map(CautionJson::stay).toList());
    }

    private static String text(StudyView study, Map<Integer, String> settled, SizingAnswer runs, List<OutdoorStay> stays, Invocation call) {
        String time = PlanText.time(runs.minutes().total(), runs.minutes().outdoors());
        return PlanText.sheet(study.plan(), study.sheet(), settled) + (time.isEmpty() ? "" : "\n" + time + "\n") + OutdoorText.of(stays, call.streams().columns())
                + (study.frozen() ? "" : "\nThe plan is not frozen: this order still changes with it.\n" + call.next("coldproof plan freeze"));
    }
}
