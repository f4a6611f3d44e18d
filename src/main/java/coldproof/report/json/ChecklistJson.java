package coldproof.report.json;

import coldproof.plan.Position;
import coldproof.quantity.ConstantWord;
import coldproof.reason.checklist.Question;
import coldproof.study.Observed;
import coldproof.study.StudyState;
import coldproof.study.Trial;
import java.util.Optional;

/** The document of {@code log --json}. */
public final class ChecklistJson {
    private ChecklistJson() {}

    /** Where the study stands: what counts so far and what is asked next. */
    public static JsonObject of(Question next, StudyState state) {
        JsonObject json = new JsonObject().put("recorded", state.trials().size()).put("skipped", state.skipped().size()).put("remaining", next.progress().open())
                .put("paused", state.paused()).put("trials", state.trials().stream().map(ChecklistJson::trial).toList());
        return json.put("next", new JsonObject().put("asks", ConstantWord.of(next.ask()))
                .put("trial", next.step().position().map(Position::number)).put("session", Optional.of(next.step().session()).filter(session -> session > 0))
                .put("condition", next.progress().condition()).put("shown", next.shown().map(ChecklistJson::shown)));
    }

    /** What a sensor shows of what is asked next. */
    private static JsonObject shown(Observed observed) {
        JsonObject json = new JsonObject().put("sensor", observed.sensor());
        return observed.amount().isPresent() ? json.put("amount", observed.amount()).put("unit", observed.unit()) : json.put("word", observed.word());
    }

    private static JsonObject trial(Trial trial) {
        JsonObject levels = new JsonObject();
        trial.recorded().levels().forEach(levels::put);
        return new JsonObject().put("trial", trial.position()).put("session", trial.recorded().session()).put("levels", levels).put("score", trial.score())
                .put("loops", trial.recorded().loops());
    }
}
