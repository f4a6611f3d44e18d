package coldproof.report.json;

import coldproof.quantity.LogRatio;
import coldproof.reason.rehearse.Counts;
import coldproof.reason.rehearse.RehearsalReport;
import coldproof.reason.rehearse.RehearsalReport.Outcome;
import coldproof.reason.rehearse.RehearsalReport.PlanChange;
import coldproof.reason.rehearse.Spent;
import coldproof.reason.sizing.Size;
import coldproof.reason.sizing.SizingAnswer;
import coldproof.reason.sizing.Warning;
import coldproof.reason.verdict.Decision;
import coldproof.reason.verdict.Word;
import java.util.List;

/** The document of {@code rehearse --json}. */
public final class RehearsalJson {
    private RehearsalJson() {}

    /** The first changed level at the top, the others below {@code others}. */
    public static JsonObject of(List<RehearsalReport> reports) {
        JsonObject json = of(reports.get(0));
        return json.put("others", reports.stream().skip(1).map(RehearsalJson::of).toList());
    }

    private static JsonObject of(RehearsalReport report) {
        JsonObject json = new JsonObject().put("simulated", true).put("factor", report.plan().compare().factor()).put("baseline", report.plan().compare().baseline())
                .put("against", report.against()).put("claim", report.plan().claim().word()).put("mattersPercent", report.plan().mattersPercent())
                .put("studies", report.settings().studies()).put("seed", report.settings().seed());
        json.put("noise", report.plan().noise().map(noise -> new JsonObject().put("runCv", noise.runCvPercent()).put("sessionCv", noise.sessionCvPercent())
                .put("from", noise.from())));
        size(json, report.size());
        json.put("stories", report.stories().stream().map(RehearsalJson::story).toList());
        json.put("weaknesses", report.weaknesses().stream().map(RehearsalJson::warning).toList());
        return json.put("changes", report.changes().stream().map(RehearsalJson::change).toList());
    }

    private static void size(JsonObject json, SizingAnswer answer) {
        json.put("wantedPower", answer.wantedPower()).put("exactPower", answer.size().map(Size::power)).put("perLevel", answer.size().map(Size::perLevel))
                .put("trials", answer.size().map(Size::trialsTotal)).put("smallestRandomisationP", answer.size().map(Size::smallestRandomisationP))
                .put("minutes", new JsonObject().put("total", answer.minutes().total()).put("outdoors", answer.minutes().outdoors()));
    }

    private static JsonObject story(Outcome outcome) {
        return counts(spent(new JsonObject().put("story", outcome.story().kind().code()).put("name", outcome.story().name())
                .put("effectPercent", LogRatio.toPercent(outcome.story().trueLog())), outcome.spent()), outcome.counts());
    }

    private static JsonObject spent(JsonObject json, Spent spent) {
        return json.put("meanTrials", spent.trials()).put("meanMinutes", new JsonObject().put("total", spent.minutes()).put("outdoors", spent.outdoorMinutes()));
    }

    private static JsonObject counts(JsonObject json, Counts counts) {
        json.put("pass", counts.share(Decision.PASS)).put("fail", counts.share(Decision.FAIL)).put("undecided", counts.share(Decision.UNDECIDED))
                .put("wrong", counts.wrongShare()).put("changeSeen", counts.changeSeen())
                .put("samenessShown", counts.samenessShown());
        JsonObject words = new JsonObject();
        for (Word word : Word.values()) {
            words.put(word.code(), counts.words().getOrDefault(word, 0L));
        }
        return json.put("words", words).put("endedAtLook", counts.endedAt());
    }

    private static JsonObject change(PlanChange change) {
        JsonObject json = spent(new JsonObject().put("change", change.what()), change.spent());
        size(json, change.size());
        return json.put("noChange", counts(new JsonObject(), change.noChange())).put("matters", counts(new JsonObject(), change.matters()));
    }

    private static JsonObject warning(Warning warning) {
        return new JsonObject().put("code", warning.code()).put("text", warning.text());
    }
}
