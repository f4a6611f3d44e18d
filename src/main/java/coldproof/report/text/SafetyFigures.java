package coldproof.report.text;

import coldproof.physics.RewarmTime;
import coldproof.quantity.Dimension;
import coldproof.reason.safety.Condition;
import coldproof.reason.safety.Reading;
import coldproof.reason.safety.Value;

/** Readings and conditions of safety rules as people read them. */
public final class SafetyFigures {
    private SafetyFigures() {}

    /** A value with its unit: {@code -9.0 °C}, {@code 12 min}, {@code wall}. */
    public static String of(Reading reading, Value value) {
        if (value.number().isEmpty()) {
            return Harmless.line(value.word());
        }
        return number(value.number().getAsDouble(), reading.dimension().orElseThrow());
    }

    /** A number in its dimension's own unit, in the unit people use for it. */
    static String number(double number, Dimension dimension) {
        return switch (dimension) {
            case TIME -> time(number);
            case PERCENT, LENGTH -> Figures.fixed(number, 0) + " " + dimension.unit();
            case SPEED -> Figures.fixed(number, 1) + " m/s (" + Figures.fixed(3.6 * number, 0) + " km/h)";
            default -> Figures.fixed(number, 1) + " " + dimension.unit();
        };
    }

    private static String time(double seconds) {
        String minutes = Figures.minutes(Math.abs(seconds) / 60);
        return seconds < 0 ? "-" + minutes : minutes;
    }

    /** A condition: {@code wind chill at most -40.0 °C}. */
    public static String condition(Condition condition) {
        if (condition instanceof Condition.Range range) {
            Dimension dimension = range.reading().dimension().orElseThrow();
            StringBuilder text = new StringBuilder(range.reading().word());
            range.lowEnd().ifPresent(low -> text.append(range.lowIncluded() ? " at least " : " above ").append(number(low, dimension)));
            if (range.lowEnd().isPresent() && range.highEnd().isPresent()) {
                text.append(" and");
            }
            range.highEnd().ifPresent(high -> text.append(range.highIncluded() ? " at most " : " below ").append(number(high, dimension)));
            return text.toString();
        }
        Condition.OneOf words = (Condition.OneOf) condition;
        return words.reading().word() + " " + String.join(" or ", words.words());
    }

    /** A wait with its interval: {@code 60 min (30 to 120 min)}. */
    public static String wait(RewarmTime wait) {
        return Figures.minutes(wait.highMinutes()) + " (" + Figures.fixed(wait.lowMinutes(), 0) + " at the earliest, likely "
                + Figures.fixed(wait.likelyMinutes(), 0) + ")";
    }
}
