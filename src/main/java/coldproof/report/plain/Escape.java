package coldproof.report.plain;

import coldproof.report.text.Harmless;
import java.util.regex.Pattern;

/** Makes text mean nothing to a reader of Markdown, by the rules of CommonMark 0.31: sections 2.4 (backslash escapes) and 2.5 (entities). */
final class Escape {
    private static final String ANYWHERE = "\\`*_[]|~$";
    /** What begins a heading, a list or a line under one, when it stands at the beginning of a line. */
    private static final Pattern AT_THE_START = Pattern.compile("#.*|=.*|[+-]([^\\p{L}\\p{N}].*)?", Pattern.DOTALL);
    private static final Pattern NUMBERED = Pattern.compile("\\d{1,9}[.)](\\s.*)?", Pattern.DOTALL);

    private Escape() {}

    static String harmless(String text) {
        return Harmless.line(text);
    }

    /** One line of text; markup, tables, lists, headings, links and HTML in it are characters only. */
    static String text(String raw) {
        String text = Harmless.line(raw).strip();
        StringBuilder out = new StringBuilder();
        boolean starts = AT_THE_START.matcher(text).matches();
        boolean numbered = NUMBERED.matcher(text).matches();
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '<') {
                out.append("&lt;");
            } else if (c == '>') {
                out.append("&gt;");
            } else if (c == '&') {
                out.append("&amp;");
            } else if (ANYWHERE.indexOf(c) >= 0 || i == 0 && starts || numbered && (c == '.' || c == ')') || startsLink(text, i)) {
                numbered = numbered && c != '.' && c != ')';
                out.append('\\').append(c);
            } else {
                out.append(c);
            }
        }
        return out.toString();
    }

    /** Many readers make links of bare addresses: the sign by which they know them is escaped. */
    private static boolean startsLink(String text, int i) {
        return text.charAt(i) == ':' && text.startsWith("//", i + 1) || text.charAt(i) == '.' && text.regionMatches(true, i - 3, "www", 0, 3) || text.charAt(i) == '@';
    }

    static int longestRun(String text, char c) {
        int longest = 0;
        int run = 0;
        for (int i = 0; i < text.length(); i++) {
            run = text.charAt(i) == c ? run + 1 : 0;
            longest = Math.max(longest, run);
        }
        return longest;
    }
}
