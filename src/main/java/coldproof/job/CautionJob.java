package coldproof.job;

import coldproof.physics.DeviceClass;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.safety.Cautions;
import coldproof.reason.safety.Phase;
import coldproof.reason.safety.Reading;
import coldproof.reason.safety.SafetyCard;
import coldproof.reason.safety.SafetyScene;
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
     * @param device the class of device, for how fast it warms up
     */
    public record Request(List<Taken> taken, Optional<Phase> phase, DeviceClass device) {
        /** Copies. */
        public Request {
            taken = List.copyOf(taken);
        }
    }

    /**
     * The card for these readings.
     *
     * @throws Refused if a reading cannot be true, or nothing was measured
     */
    public static SafetyCard card(Request request) {
        SafetyScene scene = Taken.scene(request.taken());
        if (scene.number(Reading.AIR).isEmpty() && scene.number(Reading.DEVICE).isEmpty()) {
            throw new Refused(Problem.of("nothing was measured", Place.named("caution"), "the test air at least",
                    "Measure it, then run such as: coldproof caution --air -9C --humidity 70% --indoors 21C --indoor-humidity 45%"));
        }
        return Cautions.judge(SafetyRules.bundled(), scene, request.phase(), request.device().timeConstant());
    }
}
