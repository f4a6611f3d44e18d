package coldproof.report.text;

import java.util.Set;

/** Breaks text into lines that fit. */
public final class Wrap {
    /** Width to write for where the terminal's is not known. */
    public static final int USUAL_COLUMNS = 80;
    private static final int FEWEST_COLUMNS = 20; // below, every other word would be cut
    private static final int MOST_COLUMNS = 120; // longer lines are hard to follow

    private static final Set<String> UNITS = Set.of("%", "°C", "K", "W", "Wh", "kWh", "J", "s", "ms", "min", "h", "d", "Hz", "MHz", "GHz", "m/s", "km/h", "m", "mm", "V",
            "A", "mA", "rpm", "MB", "GB", "MiB", "W/m²", "frames/s");

    private Wrap() {}

    /** The width to write for at a terminal of so many columns: from 20 to 120; 80 where it does not know its own (0 or less). */
    public static int width(int terminalColumns) {
        return terminalColumns <= 0 ? USUAL_COLUMNS : Math.max(FEWEST_COLUMNS, Math.min(MOST_COLUMNS, terminalColumns));
    }

    /** The text broken at spaces into lines of at most {@code columns}, each begun with the indent and ended. */
    public static void indented(String text, String indent, int columns, StringBuilder out) {
        int room = Math.max(Math.min(10, columns), columns - indent.length());
        String rest = text.strip();
        while (rest.length() > room) {
            int cut = cut(rest, room);
            if (cut <= 0) {
                break;
            }
            out.append(indent).append(rest, 0, cut).append('\n');
            rest = rest.substring(cut + 1).stripLeading();
        }
        out.append(indent).append(rest).append('\n');
    }

    /** The last space within the room that parts nothing, the last one where that would leave half a line empty; 0 or less: none. */
    private static int cut(String text, int room) {
        int last = text.lastIndexOf(' ', room);
        if (last <= 0) {
            return text.indexOf(' ', room);
        }
        int cut = last;
        while (cut > room / 2 && parts(text, cut)) {
            cut = text.lastIndexOf(' ', cut - 1);
        }
        return cut > room / 2 ? cut : last;
    }

    /** Whether a break here would part a number from its unit, or either side of an equals sign from it. */
    private static boolean parts(String text, int space) {
        char before = text.charAt(space - 1);
        if (before == '=' || text.startsWith("=", space + 1)) {
            return true;
        }
        return before >= '0' && before <= '9' && UNITS.contains(firstWord(text, space + 1));
    }

    private static String firstWord(String text, int from) {
        int end = from;
        while (end < text.length() && text.charAt(end) > ' ' && ",;:.)".indexOf(text.charAt(end)) < 0) {
            end++;
        }
        return text.substring(from, end);
    }

    /** A head and the text behind it, broken likewise; all its lines begin where the first does. */
    public static void hanging(String head, String text, int columns, StringBuilder out) {
        int from = out.length();
        indented(text, " ".repeat(head.length()), columns, out);
        out.replace(from, from + head.length(), head);
    }

    /** A line of a list of facts: a label in a column of so many characters, two from the edge, and the text hanging behind it. */
    public static void labelled(String label, int labelColumns, String text, int columns, StringBuilder out) {
        hanging("  " + label + " ".repeat(Math.max(1, labelColumns - label.length())), text, columns, out);
    }

    /** A point of a list, two characters from the edge. */
    public static void point(String text, int columns, StringBuilder out) {
        hanging("  - ", text, columns, out);
    }

    /** The text broken likewise, without an indent. */
    public static String at(int columns, String text) {
        StringBuilder out = new StringBuilder();
        indented(text, "", columns, out);
        return out.toString();
    }
}
