package coldproof.report.json;

import coldproof.reason.limiter.Headroom;
import coldproof.reason.limiter.LimiterAnswer;
import coldproof.reason.limiter.Prediction;
import java.util.Map;

/** The document of {@code limiter --json}. */
public final class LimiterJson {
    private LimiterJson() {}

    /** The answer for every condition, the predictions and what they came to. */
    public static JsonObject of(LimiterAnswer answer) {
        return new JsonObject().put("conditions", answer.conditions().stream().map(LimiterJson::condition).toList())
                .put("predictions", answer.predictions().stream().map(LimiterJson::prediction).toList()).put("ruledOut", answer.ruledOut())
                .put("next", answer.next()).put("remarks", answer.remarks());
    }

    private static JsonObject condition(LimiterAnswer.OfCondition condition) {
        JsonObject probabilities = new JsonObject();
        condition.probabilities().forEach((hypothesis, probability) -> probabilities.put(hypothesis.word(), probability));
        JsonObject json = new JsonObject().put("levels", levels(condition.levels())).put("limiter", condition.limiter().word())
                .put("confidence", condition.confidence()).put("probabilities", probabilities).put("trials", condition.trials())
                .put("boostSeconds", condition.boostSeconds()).put("boostSecondsFirstTrial", condition.coldBoostSeconds())
                .put("sustained", TraceJson.means(condition.sustained())).put("thermalResistance", condition.kelvinsPerWatt());
        boolean shared = !Double.isNaN(condition.heatShare());
        json.put("shares", shared ? new JsonObject().put("heat", condition.heatShare()).put("power", condition.powerShare()) : null);
        return json.put("evidence", condition.evidence()).put("headroom", condition.headroom().map(LimiterJson::headroom));
    }

    private static JsonObject headroom(Headroom headroom) {
        JsonObject json = new JsonObject().put("ambientCelsius", headroom.airCelsius()).put("interval", headroom.interval().map(interval ->
                new JsonObject().put("level", interval.level()).put("low", interval.low()).put("high", interval.high())));
        return json.put("then", headroom.then().word()).put("fanMayChange", headroom.fanMayChange());
    }

    private static JsonObject prediction(Prediction prediction) {
        return new JsonObject().put("hypothesis", prediction.hypothesis().word()).put("levels", levels(prediction.levels())).put("change", prediction.change())
                .put("quantity", prediction.quantity()).put("predicted", prediction.quantity() + " " + prediction.predicted())
                .put("observed", prediction.observed()).put("result", prediction.result().word());
    }

    private static JsonObject levels(Map<String, String> levels) {
        JsonObject json = new JsonObject();
        levels.forEach(json::put);
        return json;
    }
}
