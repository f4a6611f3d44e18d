package coldproof.report.text;

import coldproof.reason.safety.Caution;
import coldproof.reason.safety.Cautions;
import coldproof.reason.safety.Phase;
import coldproof.reason.safety.Reading;
import coldproof.reason.safety.SafetyCard;
import coldproof.reason.safety.SafetyLevel;
import coldproof.reason.safety.Value;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** The card to print and take along: one page of at most 66 lines and 80 columns, no colour, every line to tick off in its part of the job. */
public final class FieldCardText {
    /** Lines on a page. */
    public static final int LINES = 66;
    private static final int COLUMNS = 80;
    private static final String BAG = "Off (not asleep), unplugged, closed. Bag it in the test air, press the air out, seal it, carry it in.";
    private static final String RULE = "-".repeat(COLUMNS) + "\n";

    private FieldCardText() {}

    /**
     * The page.
     *
     * @param title what it is for; may be empty
     */
    public static String of(SafetyCard card, String title) {
        StringBuilder head = new StringBuilder();
        head(card, title, head);
        StringBuilder foot = new StringBuilder();
        foot(card, foot);
        int room = LINES - lines(head) - lines(foot);
        return head + body(card, room) + foot;
    }

    private static int lines(CharSequence text) {
        return (int) text.chars().filter(c -> c == '\n').count();
    }

    private static void head(SafetyCard card, String title, StringBuilder out) {
        String name = "FIELD CARD" + (title.isEmpty() ? "" : ": " + Harmless.line(title));
        String word = CautionText.word(card.level());
        int wide = COLUMNS - word.length() - 2;
        out.append(name.length() > wide ? name.substring(0, wide - 3) + "..." : name).append("  ").append(word).append('\n');
        readings(card, out, Reading.AIR, Reading.HUMIDITY, Reading.WIND, Reading.WIND_CHILL, Reading.FROSTBITE, Reading.HEAT_INDEX, Reading.DEW_POINT);
        readings(card, out, Reading.ROOM, Reading.ROOM_HUMIDITY, Reading.ROOM_DEW_POINT, Reading.DEVICE, Reading.CELL, Reading.BATTERY);
        card.budget().binding().ifPresent(limit -> Wrap.indented("Out at most " + Figures.minutes(limit.seconds() / 60) + " at a time, by " + limit.kind().word()
                + ": " + limit.because() + ".", "", COLUMNS, out));
        card.doubts().forEach(doubt -> Wrap.indented("MEASURE AGAIN: " + doubt.text(), "", COLUMNS, out));
        out.append("[!] stop   [ ] see to it, then tick   -  worth knowing\n").append(RULE);
    }

    private static void readings(SafetyCard card, StringBuilder out, Reading... readings) {
        List<String> parts = new ArrayList<>();
        for (Reading reading : readings) {
            Value value = card.values().get(reading);
            if (value != null) {
                parts.add(reading.word() + " " + SafetyFigures.of(reading, value));
            }
        }
        if (!parts.isEmpty()) {
            Wrap.indented(String.join(", ", parts), "", COLUMNS, out);
        }
    }

    /** Stops and cares always stand here; notes as far as there is room. */
    private static String body(SafetyCard card, int room) {
        long headings = card.cautions().stream().map(Caution::phase).distinct().count();
        int grave = (int) card.cautions().stream().filter(caution -> caution.level() != SafetyLevel.NOTE).count();
        int spare = room - (int) headings - grave;
        int notes = card.of(SafetyLevel.NOTE).size();
        boolean all = notes <= spare;
        int shown = all ? notes : Math.max(0, spare - 1);
        StringBuilder out = new StringBuilder();
        for (Phase phase : Phase.values()) {
            List<Caution> here = new ArrayList<>();
            for (Caution caution : card.cautions()) {
                boolean note = caution.level() == SafetyLevel.NOTE;
                if (caution.phase() == phase && (!note || shown > 0)) {
                    here.add(caution);
                    shown -= note ? 1 : 0;
                }
            }
            if (!here.isEmpty()) {
                out.append(phase.title().toUpperCase(Locale.ROOT)).append('\n');
                here.forEach(caution -> out.append(mark(caution.level())).append(caution.rule().card()).append('\n'));
            }
        }
        if (!all) {
            out.append("More notes than fit here: coldproof caution\n");
        }
        return out.toString();
    }

    private static String mark(SafetyLevel level) {
        return switch (level) {
            case STOP -> " [!] ";
            case CARE -> " [ ] ";
            case NOTE -> "  -  ";
        };
    }

    /** The steps of coming in for a screen that has little room: bag it, wait, then power and charge. */
    public static List<String> comingIn(SafetyCard card) {
        return List.of("Coming in: " + BAG, waiting(card, ""), "Power it on only then, with the bag dry outside and the coldest part at " + target(card) + " or more. "
                + charging(card));
    }

    private static void foot(SafetyCard card, StringBuilder out) {
        out.append(RULE).append("COMING IN, STEP BY STEP\n");
        step(1, BAG + " Time: ____:____", out);
        step(2, waiting(card, " until ____:____"), out);
        step(3, "Check: bag dry outside, no longer cold to the hand, coldest part at " + target(card)
                + " or more. In doubt wait on. Wipe the bag, then open it.", out);
        step(4, "Only then power it on.", out);
        step(5, charging(card), out);
        out.append(RULE);
        Wrap.indented(CautionText.DEFERS, "", COLUMNS, out);
    }

    private static void step(int number, String text, StringBuilder out) {
        Wrap.hanging(" " + number + " [ ] ", text, COLUMNS, out);
    }

    private static String charging(SafetyCard card) {
        return "Charge only with cells above 0 °C, at full current from " + Figures.fixed(Cautions.FULL_CHARGE_FROM, 0) + " °C"
                + card.charge().map(wait -> " (" + Figures.minutes(wait.highMinutes()) + ")").orElse("") + ".";
    }

    private static String waiting(SafetyCard card, String until) {
        if (card.neverWarm()) {
            return "This room is too damp: dry or heat it first, then reckon anew.";
        }
        if (card.rewarm().filter(wait -> wait.highMinutes() == 0).isPresent()) {
            return "No wait: it is 3 K above this room's dew point already. Check all the same.";
        }
        return card.rewarm().map(wait -> "Wait, sealed" + (until.isEmpty() ? "" : "," + until) + ": " + SafetyFigures.wait(wait) + ".")
                .orElse("Wait, sealed, 60 min at the least; reckon with room and its humidity.");
    }

    private static String target(SafetyCard card) {
        OptionalDouble dew = card.number(Reading.ROOM_DEW_POINT);
        return dew.isPresent() ? Figures.fixed(dew.getAsDouble() + Cautions.DRY_MARGIN, 1) + " °C" : "room warmth";
    }
}
