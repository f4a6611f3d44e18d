package coldproof.report.text;

/** Breaks text into lines that fit. */
public final class Wrap {
    /** Width to write for where the terminal's is not known. */
    public static final int USUAL_COLUMNS = 80;
    private static final int FEWEST_COLUMNS = 20; // below, every other word would be cut
    private static final int MOST_COLUMNS = 120; // longer lines are hard to follow

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
            int cut = rest.lastIndexOf(' ', room);
            if (cut <= 0) {
                cut = rest.indexOf(' ', room);
            }
            if (cut <= 0) {
                break;
            }
            out.append(indent).append(rest, 0, cut).append('\n');
            rest = rest.substring(cut + 1).stripLeading();
        }
        out.append(indent).append(rest).append('\n');
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
