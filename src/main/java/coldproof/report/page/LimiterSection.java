package coldproof.report.page;

import coldproof.reason.limiter.Hypothesis;
import coldproof.reason.limiter.LimiterAnswer;
import coldproof.reason.limiter.Prediction;
import coldproof.report.text.Figures;
import coldproof.report.text.LimiterText;
import coldproof.trace.Channel;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What holds the device back under each condition, and which explanations are ruled out by what. */
final class LimiterSection {
    private LimiterSection() {}

    static Optional<Section> of(StudyContent content) {
        return content.traces().limiter().map(LimiterSection::section);
    }

    private static Section section(LimiterAnswer answer) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(conditions(answer));
        for (LimiterAnswer.OfCondition condition : answer.conditions()) {
            String headroom = condition.headroom().map(one -> "; " + LimiterText.headroom(one)).orElse("");
            String found = condition.evidence().isEmpty() ? "." : ". What was found:";
            blocks.add(new Block.Prose(LimiterText.name(condition.levels()) + ": " + LimiterText.sentence(condition) + headroom + found));
            if (!condition.evidence().isEmpty()) {
                blocks.add(new Block.Points(condition.evidence()));
            }
        }
        if (!answer.ruledOut().isEmpty()) {
            blocks.add(new Block.Prose("Ruled out:"));
            blocks.add(new Block.Points(answer.ruledOut()));
        }
        if (!answer.remarks().isEmpty()) {
            blocks.add(new Block.Prose("Keep in mind:"));
            blocks.add(new Block.Points(answer.remarks()));
        }
        blocks.add(new Block.Prose("Next: " + answer.next()));
        return new Section("limiter", "What holds the device back", blocks);
    }

    private static Block conditions(LimiterAnswer answer) {
        List<List<String>> rows = new ArrayList<>();
        for (LimiterAnswer.OfCondition condition : answer.conditions()) {
            Channel power = condition.sustained().containsKey(Channel.PACKAGE_POWER) ? Channel.PACKAGE_POWER : Channel.SYSTEM_POWER;
            rows.add(List.of(LimiterText.name(condition.levels()), condition.limiter().word(), LimiterText.confidence(condition),
                    Integer.toString(condition.trials()), Figures.fixed(condition.boostSeconds(), 1), sustained(condition, power), sustained(condition, Channel.CLOCK),
                    sustained(condition, Channel.DIE_TEMPERATURE), sustained(condition, Channel.FAN), Figures.fixed(condition.kelvinsPerWatt(), 2)));
        }
        return new Block.Grid("The limiter under each condition, and what was sustained", List.of(Block.Column.words("condition"), Block.Column.words("limiter"),
                Block.Column.numbers("confidence"), Block.Column.numbers("trials"), Block.Column.numbers("boost, s"), Block.Column.numbers("power, W"),
                Block.Column.numbers("clock, MHz"), Block.Column.numbers("die, °C"), Block.Column.numbers("fan, rpm"), Block.Column.numbers("die to air, K/W")), rows);
    }

    private static String sustained(LimiterAnswer.OfCondition condition, Channel channel) {
        return TraceSection.level(condition.sustained().getOrDefault(channel, Double.NaN));
    }

    /** One row for each change and quantity, one column for each explanation: what it predicted, and whether that was seen. */
    static Optional<Section> predictions(StudyContent content) {
        List<Prediction> predictions = content.traces().limiter().map(LimiterAnswer::predictions).orElse(List.of());
        Map<List<String>, Map<Hypothesis, String>> rows = new LinkedHashMap<>();
        for (Prediction prediction : predictions) {
            String from = prediction.levels().isEmpty() ? "any condition" : LimiterText.name(prediction.levels());
            rows.computeIfAbsent(List.of(from, prediction.change(), prediction.quantity(), prediction.observed()), row -> new EnumMap<>(Hypothesis.class)).put(prediction.hypothesis(), prediction.predicted() + ": " + prediction.result().word());
        }
        if (rows.isEmpty()) {
            return Optional.empty();
        }
        List<Block.Column> columns = new ArrayList<>(List.of(Block.Column.words("from"), Block.Column.words("change"), Block.Column.words("quantity"), Block.Column.words("observed")));
        for (Hypothesis hypothesis : Hypothesis.values()) {
            columns.add(Block.Column.words("if " + hypothesis.word()));
        }
        List<List<String>> cells = new ArrayList<>();
        rows.forEach((row, predicted) -> {
            List<String> line = new ArrayList<>(row);
            for (Hypothesis hypothesis : Hypothesis.values()) {
                line.add(predicted.getOrDefault(hypothesis, ""));
            }
            cells.add(line);
        });
        return Optional.of(new Section("predictions", "What each explanation predicted", List.of(new Block.Grid(
                "What each explanation of the limiter predicts of every change that was made, and whether it was seen; of changes not tried, what they would show", columns, cells))));
    }
}
