package coldproof.report.json;

import coldproof.quantity.Interval;
import coldproof.quantity.LogRatio;
import coldproof.reason.ledger.Ledger;
import coldproof.reason.ledger.LedgerFigure;
import coldproof.reason.ledger.LedgerRow;
import coldproof.reason.ledger.LedgerTable;
import coldproof.reason.ledger.LedgerWorkload;
import coldproof.reason.ledger.Restraint;
import coldproof.reason.ledger.Standing;
import coldproof.reason.ledger.Told;
import coldproof.stats.interval.ConfidenceInterval;
import java.util.Optional;
import java.util.OptionalInt;

/** The document of {@code ledger --json}. */
public final class LedgerJson {
    private LedgerJson() {}

    /** The ledger. */
    public static JsonObject of(Ledger ledger) {
        JsonObject json = new JsonObject().put("title", ledger.sheet().title()).put("reference", ledger.sheet().reference()).put("level", ledger.sheet().level())
                .put("simulated", ledger.sheet().simulated()).put("currency", ledger.sheet().currency().isEmpty() ? null : ledger.sheet().currency());
        json.put("tables", ledger.tables().stream().map(LedgerJson::table).toList());
        json.put("constraints", ledger.restraints().stream().map(LedgerJson::restraint).toList());
        return json.put("warnings", ledger.warnings());
    }

    private static JsonObject table(LedgerTable table) {
        JsonObject json = new JsonObject().put("kind", table.kind().code()).put("workload", table.workload().map(LedgerWorkload::name))
                .put("unit", table.workload().map(LedgerWorkload::unit)).put("better", table.workload().map(workload -> workload.better().word()));
        return json.put("devices", table.rows().stream().map(LedgerJson::row).toList());
    }

    private static JsonObject row(LedgerRow row) {
        JsonObject json = new JsonObject().put("device", row.device()).put("value", row.value());
        row.figure().ifPresent(figure -> figure(json, figure));
        standing(json, row.standing());
        json.put("ratioOfMeans", row.ratioOfMeans().map(LedgerJson::ratio));
        return json.put("rank", new JsonObject().put("best", whole(row.bestRank())).put("worst", whole(row.worstRank()))).put("workloads", row.workloads());
    }

    private static void figure(JsonObject json, LedgerFigure figure) {
        json.put("uncertaintyPercent", figure.uncertaintyPercent()).put("repeats", whole(figure.repeats())).put("source", figure.source())
                .put("date", figure.date().isEmpty() ? null : figure.date()).put("own", figure.own());
    }

    /** Speeds: above 1 and above 0 % mean faster, for a time as for a rate. */
    private static void standing(JsonObject json, Standing standing) {
        boolean known = standing.told() != Told.NOT_STATED;
        json.put("told", standing.told().code()).put("speedRatio", Math.exp(standing.logSpeedRatio())).put("fasterPercent", standing.percentAgainstReference())
                .put("referenceFasterPercent", standing.percentOfReferenceAgainstIt()).put("logRatio", standing.logSpeedRatio());
        json.put("standardErrorLog", known ? standing.standardUncertainty() : Double.NaN).put("df", known ? standing.degreesOfFreedom() : Double.NaN);
        json.put("interval", standing.interval().map(LedgerJson::percent));
    }

    private static JsonObject percent(Interval interval) {
        return new JsonObject().put("level", interval.level()).put("low", LogRatio.toPercent(interval.low())).put("high", LogRatio.toPercent(interval.high()));
    }

    private static JsonObject ratio(ConfidenceInterval interval) {
        return new JsonObject().put("level", interval.level()).put("low", interval.low()).put("high", interval.high()).put("bounded", interval.isBounded());
    }

    private static Optional<Long> whole(OptionalInt number) {
        return number.isPresent() ? Optional.of((long) number.getAsInt()) : Optional.empty();
    }

    private static JsonObject restraint(Restraint restraint) {
        JsonObject json = new JsonObject().put("silicon", restraint.silicon()).put("constrained", restraint.constrained())
                .put("constraint", restraint.constraint()).put("unconstrained", restraint.unconstrained());
        standing(json, restraint.standing());
        return json.put("workloads", restraint.workloads());
    }
}
