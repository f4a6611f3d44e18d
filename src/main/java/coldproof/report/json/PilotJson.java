package coldproof.report.json;

import coldproof.reason.sizing.PilotAdvice;
import coldproof.reason.sizing.PilotAdvice.Pilot;

/** The document of {@code noise --advise --json}. */
public final class PilotJson {
    private PilotJson() {}

    /** What is known now, the pilots, and the one to run. */
    public static JsonObject of(PilotAdvice advice) {
        return new JsonObject().put("wantedPower", advice.plan().errors().power()).put("power", advice.power()).put("assurance", advice.assurance())
                .put("df", advice.degreesOfFreedom()).put("pilots", advice.pilots().stream().map(PilotJson::pilot).toList())
                .put("best", advice.best().map(PilotJson::pilot));
    }

    private static JsonObject pilot(Pilot pilot) {
        return new JsonObject().put("sessions", pilot.sessions()).put("trials", pilot.trials()).put("df", pilot.degreesOfFreedom())
                .put("noiseFactor", pilot.noise()).put("minutes", pilot.minutes()).put("assurance", pilot.assurance())
                .put("studyPerLevel", pilot.needed()).put("minutesInAll", pilot.minutesInAll());
    }
}
