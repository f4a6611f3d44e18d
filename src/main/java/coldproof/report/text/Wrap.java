package coldproof.report.text;

/** Breaks text into lines that fit. */
public final class Wrap {
    private Wrap() {}

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

    /** The text broken likewise, without an indent. */
    public static String at(int columns, String text) {
        StringBuilder out = new StringBuilder();
        indented(text, "", columns, out);
        return out.toString();
    }
}
