package coldproof.report.json;

import coldproof.reason.limiter.Limiter;
import coldproof.reason.rehearse.LimiterReport;

/** The document of {@code rehearse --limiters --json}. */
public final class LimiterReportJson {
    private LimiterReportJson() {}

    /** Truth by answer. */
    public static JsonObject of(LimiterReport report) {
        JsonObject confusion = new JsonObject();
        report.rows().forEach((truth, named) -> {
            JsonObject row = new JsonObject();
            for (Limiter one : Limiter.values()) {
                row.put(one.word(), named.getOrDefault(one, 0));
            }
            confusion.put(truth.word(), row);
        });
        return new JsonObject().put("simulated", true).put("studies", report.studies()).put("conditions", report.conditions()).put("unclear", report.unclear())
                .put("wrong", report.wrong().size()).put("wrongShare", report.wrongShare()).put("confusion", confusion).put("wrongAnswers", report.wrong());
    }
}
