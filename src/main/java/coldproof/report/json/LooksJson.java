package coldproof.report.json;

import coldproof.quantity.ConstantWord;
import coldproof.quantity.Interval;
import coldproof.quantity.LogRatio;
import coldproof.reason.looks.LookCost;
import coldproof.reason.verdict.LookReport;

/** What {@code verdict --json} and {@code runs --json} say below {@code looks}. */
final class LooksJson {
    private LooksJson() {}

    static JsonObject of(LookReport report) {
        JsonObject json = new JsonObject().put("planned", report.planned()).put("spending", spending());
        json.put("taken", report.taken().stream().map(LooksJson::look).toList());
        json.put("decidedAt", report.decidedAt().map(look -> (Object) (long) look.number()));
        json.put("next", report.next().isEmpty() ? null : report.next());
        json.put("chanceOfGain", report.chance()).put("futile", report.isFutile());
        return json.put("adjusted", report.adjusted().map(LooksJson::adjusted));
    }

    static JsonObject of(LookCost cost) {
        JsonObject json = new JsonObject().put("planned", cost.looks().size()).put("spending", spending()).put("unit", cost.unitWord());
        json.put("looks", cost.looks().stream().map(bound -> new JsonObject().put("look", bound.point().number()).put("units", bound.point().units())
                .put("informationFraction", bound.point().fraction()).put("df", bound.point().degreesOfFreedom()).put("nominalP", bound.nominalP())
                .put("spent", bound.spent())).toList());
        return json.put("inflation", cost.inflation()).put("power", cost.power()).put("expectedUnitsIfNone", cost.expectedUnitsIfNone())
                .put("expectedUnitsIfChange", cost.expectedUnitsIfChange());
    }

    private static String spending() {
        return ConstantWord.of(LookCost.SPENDING);
    }

    private static JsonObject look(LookReport.Look look) {
        return new JsonObject().put("look", look.number()).put("units", look.units()).put("informationFraction", look.fraction()).put("t", look.t())
                .put("boundary", look.bound()).put("nominalP", look.nominalP()).put("spent", look.spent()).put("verdict", look.word().code());
    }

    private static JsonObject adjusted(LookReport.Adjusted adjusted) {
        Interval percent = adjusted.interval().logToPercent();
        return new JsonObject().put("effectPercent", LogRatio.toPercent(adjusted.log())).put("p", adjusted.p()).put("interval", percent);
    }
}
