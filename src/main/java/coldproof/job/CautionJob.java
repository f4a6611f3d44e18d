package coldproof.job;

import coldproof.files.folder.StudyFolder;
import coldproof.physics.DeviceClass;
import coldproof.physics.Site;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.safety.Cautions;
import coldproof.reason.safety.Phase;
import coldproof.reason.safety.Reading;
import coldproof.reason.safety.SafetyCard;
import coldproof.reason.safety.SafetyScene;
import coldproof.reason.safety.StudySafety;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Go, take care or stop: judges readings by the safety rules. */
public final class CautionJob {
    private CautionJob() {}

    /**
     * What is asked.
     *
     * @param taken readings as the person gave them
     * @param phase the part of the job about to begin; empty for the whole outing
     * @param device the class of device, for how fast it warms up; empty: as the study says, else a laptop
     * @param site where the test air is, for the sun; empty: as the study says
     * @param comingIn logs of the device warming up in the room, idle, for how fast it does; a study's own are taken besides
     */
    public record Request(List<Taken> taken, Optional<Phase> phase, Optional<DeviceClass> device, Optional<Site> site, List<Path> comingIn) {
        /** Copies. */
        public Request {
            taken = List.copyOf(taken);
            comingIn = List.copyOf(comingIn);
        }
    }

    /**
     * An answer.
     *
     * @param card what holds
     * @param title the question of the study; empty without one
     * @param remarks what the person should know about how it was judged
     */
    public record Answer(SafetyCard card, String title, List<String> remarks) {
        /** Copies. */
        public Answer {
            remarks = List.copyOf(remarks);
        }
    }

    /**
     * Judges readings alone.
     *
     * @param now the moment, for the sun
     * @throws Refused if a reading cannot be true, or nothing was measured
     */
    public static Answer ofReadings(Request request, Instant now) {
        return answer(request, StudySafety.unchanged(SafetyRules.bundled()), SafetyScene.NOTHING, "", now, List.of(), Optional.empty());
    }

    /**
     * Judges readings for a study: by its rules, with what its plan says of air, room, power and length of a stay where nothing was measured.
     *
     * @param now the moment, for the sun
     * @throws Refused likewise, or if the study's plan or safety file is wrong
     */
    public static Answer ofStudy(Request request, Path study, Instant now) {
        StudyView view = StudyView.read(study);
        StudySafety safety = StudyRules.of(view);
        SafetyScene planned = new PlanScene(view.plan(), view.sheet()).coldestOuting();
        boolean nominal = request.taken().stream().noneMatch(taken -> taken.reading() == Reading.AIR) && planned.number(Reading.AIR).isPresent();
        List<String> remarks = nominal ? List.of("The air is the plan's own figure. On site, judge again with the air as measured.") : List.of();
        return answer(request, safety, planned, view.plan().title(), now, remarks, Optional.of(study));
    }

    /** Whether a folder holds a study to judge for. */
    public static boolean isStudy(Path folder) {
        return PlanFile.exists(folder) || StudyFolder.hasJournal(folder);
    }

    private static Answer answer(Request request, StudySafety safety, SafetyScene planned, String title, Instant now, List<String> remarks,
            Optional<Path> study) {
        StudySafety placed = new StudySafety(safety.rules(), safety.loosened(), request.device().orElse(safety.device()), request.site().or(safety::site),
                safety.known());
        SafetyScene scene = GateScene.withDaylight(placed, now, safety.known().overlaidBy(planned).overlaidBy(Taken.scene(request.taken())));
        if (scene.number(Reading.AIR).isEmpty() && scene.number(Reading.DEVICE).isEmpty()) {
            throw new Refused(Problem.of("nothing was measured", Place.named("caution"), "the test air at least",
                    "Measure it, then run such as: coldproof caution --air -9C --humidity 70% --indoors 21C --indoor-humidity 45%"));
        }
        ComingIn comingIn = ComingIn.of(placed, study, request.comingIn());
        List<String> all = new ArrayList<>(remarks);
        all.addAll(comingIn.remarks());
        return new Answer(Cautions.judge(placed.rules(), scene, request.phase(), comingIn.timeConstant()), title, all);
    }
}
