package coldproof.report.text;

import coldproof.reason.safety.Caution;
import coldproof.reason.safety.Phase;
import coldproof.reason.safety.Reading;
import coldproof.reason.safety.SafetyCard;
import coldproof.reason.safety.SafetyLevel;
import coldproof.reason.safety.Value;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Go, take care or stop, for people: the numbers, what holds, and what was not looked at. */
public final class CautionText {
    /** How every card ends. */
    public static final String DEFERS = "The maker's limits, local codes and licensed practice come before anything said here.";
    private static final List<Reading> HEAD = List.of(Reading.AIR, Reading.HUMIDITY, Reading.WIND, Reading.DEW_POINT, Reading.FROST_POINT,
            Reading.WIND_CHILL, Reading.FROSTBITE, Reading.HEAT_INDEX, Reading.DEVICE, Reading.ROOM, Reading.ROOM_HUMIDITY, Reading.ROOM_DEW_POINT);

    private CautionText() {}

    /** The answer in full. */
    public static String of(SafetyCard card, int columns) {
        StringBuilder out = new StringBuilder();
        out.append(word(card.level())).append(card.phase().map(phase -> ", " + phase.title()).orElse("")).append("\n\n");
        numbers(card, columns, out);
        for (Phase phase : Phase.values()) {
            List<Caution> here = card.cautions().stream().filter(caution -> caution.phase() == phase && caution.level() != SafetyLevel.NOTE).toList();
            if (!here.isEmpty()) {
                out.append('\n').append(phase.title()).append('\n');
                here.forEach(caution -> caution(caution, columns, out));
            }
        }
        notes(card, columns, out);
        card.doubts().forEach(doubt -> Wrap.indented("Hard to believe: " + doubt.text() + " Measure again.", "  ", columns, out));
        missing(card, columns, out);
        out.append('\n');
        Wrap.indented(DEFERS, "", columns, out);
        return out.toString();
    }

    /** GO, TAKE CARE or STOP. */
    public static String word(SafetyLevel level) {
        return switch (level) {
            case NOTE -> "GO";
            case CARE -> "TAKE CARE";
            case STOP -> "STOP";
        };
    }

    private static void numbers(SafetyCard card, int columns, StringBuilder out) {
        List<String> parts = new ArrayList<>();
        for (Reading reading : HEAD) {
            Value value = card.values().get(reading);
            if (value != null && !(reading == Reading.WIND_CHILL && card.scene().number(Reading.WIND).isEmpty())) {
                boolean assumed = reading == Reading.DEVICE && card.scene().number(Reading.DEVICE).isEmpty();
                parts.add(reading.word() + " " + SafetyFigures.of(reading, value) + (assumed ? " (not measured: taken as the test air's)" : ""));
            }
        }
        Wrap.indented(String.join(", ", parts), "  ", columns, out);
        card.rewarm().ifPresent(wait -> Wrap.indented("Wait in the room before power: " + SafetyFigures.wait(wait), "  ", columns, out));
        card.charge().ifPresent(wait -> Wrap.indented("Wait in the room before charging: " + SafetyFigures.wait(wait), "  ", columns, out));
        card.budget().binding().ifPresent(limit -> Wrap.indented("One stay outdoors: at most " + Figures.minutes(limit.seconds() / 60) + ", by "
                + limit.kind().word() + ": " + limit.because(), "  ", columns, out));
        if (card.neverWarm()) {
            Wrap.indented("This room is so damp that the device never gets 3 K above its dew point. Dry or heat the room first.", "  ", columns, out);
        }
    }

    private static void caution(Caution caution, int columns, StringBuilder out) {
        String mark = caution.level() == SafetyLevel.STOP ? "  STOP  " : "  care  ";
        Wrap.hanging(mark, caution.rule().text(), columns, out);
        Wrap.indented(decided(caution) + caution.rule().why() + " [" + caution.rule().id() + "; " + caution.rule().source() + "]",
                " ".repeat(mark.length()), columns, out);
    }

    private static String decided(Caution caution) {
        List<String> parts = new ArrayList<>();
        for (Map.Entry<Reading, Value> one : caution.decided().entrySet()) {
            parts.add(one.getKey().word() + " " + SafetyFigures.of(one.getKey(), one.getValue()));
        }
        return parts.isEmpty() ? "" : "(" + String.join(", ", parts) + ") ";
    }

    private static void notes(SafetyCard card, int columns, StringBuilder out) {
        List<Caution> notes = card.of(SafetyLevel.NOTE);
        if (!notes.isEmpty()) {
            out.append("\nworth knowing\n");
            notes.forEach(note -> Wrap.point(note.phase().title() + ": " + note.rule().card(), columns, out));
        }
    }

    private static void missing(SafetyCard card, int columns, StringBuilder out) {
        if (!card.missing().isEmpty()) {
            out.append('\n');
            Wrap.indented("Not looked at, because it was not given: " + String.join(", ", card.missing().stream().map(Reading::word).toList()) + ".", "",
                    columns, out);
        }
    }
}
