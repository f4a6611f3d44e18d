package coldproof.report.json;

import coldproof.quantity.ConstantWord;
import coldproof.reason.sizing.CheapestStudy;
import coldproof.reason.sizing.PlanAdvice;
import coldproof.reason.sizing.PlannedStudy;
import java.util.List;

/** The document of {@code runs --cheapest --json}. */
public final class CheapestJson {
    private CheapestJson() {}

    /** Best, strongest, frontier and reasons. */
    public static JsonObject of(CheapestStudy study) {
        PlanAdvice advice = study.advice();
        JsonObject json = new JsonObject().put("wantedPower", advice.wantedPower()).put("outdoorsCounts", study.terms().outdoorWeight())
                .put("examined", advice.examined());
        json.put("best", advice.best().map(plan -> plan(study, plan))).put("strongest", advice.strongest().map(plan -> plan(study, plan)))
                .put("equal", advice.equal().map(plan -> plan(study, plan))).put("asPlanned", plan(study.planned(), study.plannedPerLevel()));
        json.put("runnersUp", plans(study, advice.runnersUp())).put("frontier", plans(study, advice.frontier()));
        JsonObject lifted = new JsonObject();
        advice.lifted().forEach((limit, plan) -> lifted.put(ConstantWord.of(limit), plan(study, plan)));
        return json.put("withoutLimit", lifted).put("trialsOptimum", advice.trialsOptimum()).put("ratioOptimum", advice.ratioOptimum());
    }

    private static List<JsonObject> plans(CheapestStudy study, List<PlannedStudy> plans) {
        return plans.stream().map(plan -> plan(study, plan)).toList();
    }

    private static JsonObject plan(CheapestStudy study, PlannedStudy plan) {
        return plan(plan, study.perLevel(plan));
    }

    private static JsonObject plan(PlannedStudy plan, List<Integer> perLevel) {
        return new JsonObject().put("perLevel", perLevel).put("trialsPerCondition", plan.trialsPerCondition()).put("trialsTotal", plan.trials())
                .put("power", plan.power()).put("df", plan.degreesOfFreedom()).put("outings", plan.outings())
                .put("minutes", new JsonObject().put("total", plan.totalSeconds() / 60).put("outdoors", plan.outdoorsSeconds() / 60));
    }
}
