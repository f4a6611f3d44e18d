package coldproof.report.json;

import coldproof.reason.noise.NoiseReading;

/** The document of {@code noise --json}. */
public final class NoiseJson {
    private NoiseJson() {}

    /** The noise, percent. */
    public static JsonObject of(NoiseReading noise) {
        JsonObject json = new JsonObject().put("runCvPercent", noise.runCvPercent()).put("runDf", noise.runDf()).put("runInterval", noise.runInterval());
        json.put("sessionCvPercent", noise.sessionCvPercent()).put("sessionDf", noise.sessionDf());
        if (noise.sessionInterval().isPresent()) {
            json.put("sessionInterval", noise.sessionInterval().get());
        } else {
            json.putNull("sessionInterval");
        }
        return json.put("sessionVarianceNegative", noise.sessionNegative()).put("studies", noise.studies()).put("trials", noise.trials());
    }
}
