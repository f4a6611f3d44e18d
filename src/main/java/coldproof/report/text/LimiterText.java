package coldproof.report.text;

import coldproof.quantity.Counted;
import coldproof.quantity.Interval;
import coldproof.reason.limiter.Headroom;
import coldproof.reason.limiter.Hypothesis;
import coldproof.reason.limiter.Limiter;
import coldproof.reason.limiter.LimiterAnswer;
import coldproof.reason.limiter.Prediction;
import coldproof.trace.Channel;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The limiter as a person reads it: the answer for each condition first, then the evidence, what is ruled out, the predictions that did so, and what to try next. */
public final class LimiterText {
    private static final int MOST_EVIDENCE = 6;
    private static final List<String> TELLING = List.of("clock", "power", "die temperature"); // performance goes as the clock
    private static final int MOST_TELLING = 2;
    private static final int RESULT_COLUMNS = 15; // four of them are the indent below the effect
    private static final List<Channel> SHOWN = List.of(Channel.PACKAGE_POWER, Channel.CLOCK, Channel.DIE_TEMPERATURE, Channel.FAN);

    private final LimiterAnswer answer;
    private final int columns;
    private final StringBuilder out = new StringBuilder();

    private LimiterText(LimiterAnswer answer, int columns) {
        this.answer = answer;
        this.columns = columns;
    }

    /** The whole answer for a screen of so many columns. */
    public static String of(LimiterAnswer answer, int columns) {
        LimiterText text = new LimiterText(answer, columns);
        text.out.append(LimiterSummary.of(answer, columns));
        text.conditions();
        text.list("Ruled out", answer.ruledOut());
        text.predictions();
        text.notTried();
        text.list("Keep in mind", answer.remarks());
        text.out.append('\n').append(Wrap.at(columns, "Next: " + Harmless.line(answer.next())));
        return text.out.toString();
    }

    /** A condition in words: {@code ambient chilled, fan auto}. */
    public static String name(Map<String, String> levels) {
        return Harmless.line(String.join(", ", levels.entrySet().stream().map(level -> level.getKey() + " " + level.getValue()).toList()));
    }

    /** What was found for a condition, in one sentence. */
    public static String sentence(LimiterAnswer.OfCondition condition) {
        String sure = confidence(condition);
        return switch (condition.limiter()) {
            case UNCLEAR -> "unclear: the likeliest is " + likeliest(condition).phrase() + " with " + sure + ", too little to say so";
            case MIXED -> "mixed: heat for " + Figures.fixed(100 * condition.heatShare(), 0) + " % of the time, the power limit for "
                    + Figures.fixed(100 * condition.powerShare(), 0) + " %";
            case HEAT, POWER, CLOCK, SUPPLY, WORKLOAD -> condition.limiter().word() + ": held back by " + Hypothesis.valueOf(condition.limiter().name()).phrase()
                    + " (confidence " + sure + ")";
        };
    }

    /** How sure the answer is, as a percentage without decimals. */
    public static String confidence(LimiterAnswer.OfCondition condition) {
        return Figures.fixed(100 * condition.confidence(), 0) + " %";
    }

    private static Hypothesis likeliest(LimiterAnswer.OfCondition condition) {
        return condition.probabilities().entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow().getKey();
    }

    private void conditions() {
        for (LimiterAnswer.OfCondition condition : answer.conditions()) {
            out.append(out.isEmpty() ? "" : "\n").append(Wrap.at(columns, name(condition.levels()) + "   (" + Counted.of(condition.trials(), "trial") + ")"));
            Wrap.indented(sentence(condition), "  ", columns, out);
            Wrap.indented(measured(condition), "  ", columns, out);
            condition.headroom().ifPresent(headroom -> Wrap.indented(headroom(headroom), "  ", columns, out));
            condition.evidence().stream().limit(MOST_EVIDENCE).forEach(this::point);
        }
    }

    private static String measured(LimiterAnswer.OfCondition condition) {
        StringBuilder text = new StringBuilder("sustained");
        String separator = " ";
        for (Channel channel : SHOWN) {
            if (condition.sustained().containsKey(channel)) {
                double mean = condition.sustained().get(channel);
                text.append(separator).append(Figures.fixed(mean, Math.abs(mean) >= 1000 ? 0 : 1)).append(' ').append(TracePlot.unit(channel));
                separator = ", ";
            }
        }
        if (!Double.isNaN(condition.boostSeconds())) {
            text.append(condition.boostSeconds() == 0 ? "; no boost" : "; boost " + Figures.fixed(condition.boostSeconds(), 1) + " s");
        }
        if (!Double.isNaN(condition.kelvinsPerWatt())) {
            text.append("; ").append(Figures.fixed(condition.kelvinsPerWatt(), 2)).append(" K/W die to air");
        }
        return text.toString();
    }

    /** At which air the limiter would change. */
    public static String headroom(Headroom headroom) {
        String range = headroom.interval().map(LimiterText::range).orElse("");
        String then = headroom.then() == Limiter.HEAT ? "in air above " : "in air below ";
        return then + Figures.fixed(headroom.airCelsius(), 1) + " °C" + range + " " + headroom.then().word() + " would take over"
                + (headroom.fanMayChange() ? ", if the fan kept its speed" : "");
    }

    private static String range(Interval interval) {
        return " (" + Figures.fixed(100 * interval.level(), 0) + " % interval " + Figures.fixed(interval.low(), 1) + " to " + Figures.fixed(interval.high(), 1) + ")";
    }

    private void predictions() {
        List<Prediction> tested = answer.predictions().stream().filter(prediction -> prediction.result() != Prediction.Result.UNTESTED).toList();
        long made = answer.predictions().stream().filter(prediction -> !prediction.levels().isEmpty()).count();
        if (made == 0) {
            return;
        }
        out.append('\n').append(Wrap.at(columns, "Predictions that told explanations apart (" + tested.size() + " of " + made
                + " could be tested; all stand in the report and with --json)"));
        Map<String, Map<String, List<Prediction>>> changes = new LinkedHashMap<>();
        tested.forEach(one -> changes.computeIfAbsent("from " + name(one.levels()) + ": " + Harmless.line(one.change()), change -> new LinkedHashMap<>())
                .computeIfAbsent(one.quantity() + " " + one.observed(), seen -> new ArrayList<>()).add(one));
        changes.forEach((change, effects) -> {
            effects.values().removeIf(LimiterText::agreesWithAll);
            if (!effects.isEmpty()) {
                Wrap.indented(change, "  ", columns, out);
                effects.forEach(this::effect);
            }
        });
    }

    private static boolean agreesWithAll(List<Prediction> ofOneEffect) {
        return ofOneEffect.stream().allMatch(one -> one.result() == Prediction.Result.SUPPORTED);
    }

    /** One effect, and what was predicted of it by which explanation. */
    private void effect(String seen, List<Prediction> predictions) {
        Wrap.indented(seen, "    ", columns, out);
        for (Prediction.Result result : List.of(Prediction.Result.SUPPORTED, Prediction.Result.RULED_OUT)) {
            Map<String, List<String>> words = new LinkedHashMap<>();
            predictions.stream().filter(one -> one.result() == result)
                    .forEach(one -> words.computeIfAbsent(one.predicted(), same -> new ArrayList<>()).add(one.hypothesis().word()));
            if (!words.isEmpty()) {
                String said = String.join("; ", words.entrySet().stream().map(one -> either(one.getValue()) + ": " + one.getKey()).toList());
                Wrap.labelled("    " + result.word(), RESULT_COLUMNS, said, columns, out);
            }
        }
    }

    /** What a change that nobody made would show, by the two quantities that tell the explanations apart; changes that show the same together. */
    private void notTried() {
        Map<String, List<String>> changes = new LinkedHashMap<>();
        answer.predictions().stream().filter(prediction -> prediction.levels().isEmpty()).map(Prediction::change).distinct()
                .forEach(change -> changes.computeIfAbsent(telling(change), shown -> new ArrayList<>()).add(change));
        List<String> lines = new ArrayList<>();
        changes.forEach((shown, alike) -> lines.add(either(alike) + ": " + shown));
        list("Not tried, and what it would show", lines);
    }

    private String telling(String change) {
        List<String> telling = new ArrayList<>();
        for (String quantity : TELLING) {
            Map<String, List<String>> predicted = new LinkedHashMap<>();
            answer.predictions().stream().filter(prediction -> prediction.levels().isEmpty() && prediction.change().equals(change) && prediction.quantity().equals(quantity))
                    .forEach(prediction -> predicted.computeIfAbsent(prediction.predicted(), words -> new ArrayList<>()).add(prediction.hypothesis().word()));
            if (predicted.size() > 1 && telling.size() < MOST_TELLING) {
                telling.add(quantity + " " + String.join(", ", predicted.entrySet().stream().map(one -> one.getKey() + " if " + either(one.getValue())).toList()));
            }
        }
        return String.join("; ", telling);
    }

    private static String either(List<String> words) {
        int last = words.size() - 1;
        return last == 0 ? words.get(0) : String.join(", ", words.subList(0, last)) + " or " + words.get(last);
    }

    private void list(String title, List<String> lines) {
        if (lines.isEmpty()) {
            return;
        }
        out.append('\n').append(title).append('\n');
        lines.forEach(this::point);
    }

    private void point(String line) {
        Wrap.point(Harmless.line(line), columns, out);
    }
}
