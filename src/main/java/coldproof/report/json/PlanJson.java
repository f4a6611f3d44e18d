package coldproof.report.json;

import coldproof.plan.Factor;
import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.plan.RunSheet;
import java.util.List;
import java.util.Map;

/** The documents of {@code plan --json} and {@code schedule --json}. */
public final class PlanJson {
    private PlanJson() {}

    /** The plan. */
    public static JsonObject plan(Plan plan, boolean frozen, String digest) {
        JsonObject json = new JsonObject().put("title", plan.title()).put("device", plan.device());
        json.put("metric", new JsonObject().put("name", plan.metric().name()).put("unit", plan.metric().unit()).put("better", plan.metric().better().word()));
        json.put("compare", new JsonObject().put("factor", plan.compare().factor()).put("baseline", plan.compare().baseline()).put("against", plan.compare().against()));
        json.put("mattersPercent", plan.mattersPercent()).put("claim", plan.claim().word());
        json.put("factors", plan.factors().stream().map(PlanJson::factor).toList());
        json.put("falseAlarm", plan.errors().falseAlarm()).put("missedGain", plan.errors().missedGain()).put("looks", plan.looks());
        json.put("layout", new JsonObject().put("kind", plan.layout().kind().word()).put("counts", counts(plan.layout().counts()))
                .put("trialsPerCondition", plan.layout().trialsPerCondition()).put("order", plan.layout().order().word()));
        return json.put("seed", plan.seed()).put("frozen", frozen).put("digest", digest);
    }

    private static JsonObject factor(Factor factor) {
        return new JsonObject().put("name", factor.name()).put("change", factor.change().word()).put("levels", factor.levelNames());
    }

    private static JsonObject counts(Map<String, Integer> counts) {
        JsonObject json = new JsonObject();
        counts.forEach((level, count) -> json.put(level.isEmpty() ? "all" : level, count));
        return json;
    }

    /** The run sheet; {@code settled} says what became of a trial. */
    public static JsonObject sheet(RunSheet sheet, Map<Integer, String> settled) {
        List<JsonObject> trials = sheet.positions().stream().map(position -> position(position).put("result", settled.get(position.number()))).toList();
        return new JsonObject().put("sessions", sheet.sessions()).put("trials", trials);
    }

    /** One trial to run. */
    public static JsonObject position(Position position) {
        JsonObject levels = new JsonObject();
        position.levels().forEach(levels::put);
        JsonObject json = new JsonObject().put("trial", position.number()).put("session", position.session()).put("order", position.orderInSession());
        if (position.pair() > 0) {
            json.put("pair", position.pair());
        }
        return json.put("levels", levels);
    }
}
