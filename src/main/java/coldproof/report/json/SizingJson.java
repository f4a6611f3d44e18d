package coldproof.report.json;

import coldproof.quantity.LogRatio;
import coldproof.reason.sizing.Size;
import coldproof.reason.sizing.SizingAnswer;
import coldproof.reason.sizing.Warning;
import java.util.Optional;
import java.util.OptionalDouble;

/** The document of {@code runs --json}. */
public final class SizingJson {
    private SizingJson() {}

    /** The size, what it can see, the time it takes. */
    public static JsonObject of(SizingAnswer answer) {
        JsonObject json = new JsonObject();
        answer.size().ifPresent(size -> size(json, size));
        json.put("wantedPower", answer.wantedPower()).put("mattersPercent", answer.mattersPercent());
        json.put("needed", answer.needed().map(size -> size(new JsonObject(), size)));
        json.put("minutes", new JsonObject().put("total", answer.minutes().total()).put("outdoors", answer.minutes().outdoors()));
        answer.looks().ifPresent(cost -> json.put("looks", LooksJson.of(cost)));
        return json.put("warnings", answer.warnings().stream().map(SizingJson::warning).toList());
    }

    private static JsonObject size(JsonObject json, Size size) {
        json.put("layout", size.layout().word()).put("claim", size.claim().word()).put("effectPercent", LogRatio.toPercent(size.logEffect()))
                .put("logEffect", size.logEffect()).put("perLevel", size.perLevel()).put("trialsTotal", size.trialsTotal()).put("df", size.degreesOfFreedom())
                .put("power", size.power()).put("powerOneFewer", size.powerOneFewer());
        json.put("smallestDetectablePercent", percent(size.smallestDetectableLog())).put("smallestMarginPercent", percent(size.smallestMarginLog()));
        return json.put("smallestRandomisationP", size.smallestRandomisationP());
    }

    private static Optional<Double> percent(OptionalDouble log) {
        return log.isPresent() ? Optional.of(LogRatio.toPercent(log.getAsDouble())) : Optional.empty();
    }

    private static JsonObject warning(Warning warning) {
        return new JsonObject().put("code", warning.code()).put("text", warning.text());
    }
}
