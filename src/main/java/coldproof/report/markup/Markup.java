package coldproof.report.markup;

import coldproof.report.text.Harmless;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * A document of elements being written. Text and attribute values may hold anything: markup in them is shown as characters, control
 * characters and reordering marks as visible symbols, and letters written from right to left are kept apart from what surrounds them.
 * Names of elements and attributes come from the program and are refused when they are not plain. Not thread-safe.
 */
public final class Markup {
    private static final Set<String> VOID = Set.of("meta", "br", "hr", "col");
    private static final Set<String> REFUSED = Set.of("script", "iframe", "object", "embed", "link", "base", "form", "foreignObject");
    /** A place in the page, or a file in this folder or below: no scheme, no host, no way up. */
    private static final Pattern PLACE_HERE = Pattern.compile("#[a-z0-9-]+|[A-Za-z0-9%_~-][A-Za-z0-9%._~-]*(/[A-Za-z0-9%_~-][A-Za-z0-9%._~-]*)*");
    private static final Pattern UNIT_APART = Pattern.compile("(?<=\\d) (?=%|°C)");
    private final StringBuilder out = new StringBuilder();
    private final Deque<String> open = new ArrayDeque<>();
    private int drawings;

    /** Writes the line that tells a browser to read the rest as HTML. */
    public Markup doctype() {
        out.append("<!DOCTYPE html>\n");
        return this;
    }

    /**
     * Opens an element.
     *
     * @param name plain letters and digits
     * @param attributes names and values in turn
     */
    public Markup open(String name, String... attributes) {
        if (REFUSED.contains(name)) {
            throw new IllegalArgumentException("a page has no element " + name);
        }
        out.append('<').append(plain(name));
        for (int i = 0; i < attributes.length; i += 2) {
            attribute(attributes[i], attributes[i + 1]);
        }
        if (VOID.contains(name)) {
            out.append(" />"); // so that the page is well-formed XML too
            return this;
        }
        out.append('>');
        open.push(name);
        drawings += name.equals("svg") ? 1 : 0;
        return this;
    }

    private void attribute(String name, String value) {
        String lower = plain(name).toLowerCase(Locale.ROOT);
        boolean leads = lower.equals("href") && !PLACE_HERE.matcher(value).matches();
        if (lower.startsWith("on") || leads || lower.equals("src")) {
            throw new IllegalArgumentException("an attribute " + name + "=\"" + value + "\" could fetch or run something");
        }
        out.append(' ').append(name).append("=\"");
        escape(Harmless.line(value));
        out.append('"');
    }

    private static String plain(String name) {
        if (!name.matches("[A-Za-z][A-Za-z0-9-]*")) {
            throw new IllegalArgumentException("\"" + name + "\" is no name of an element or attribute");
        }
        return name;
    }

    /** Closes the element opened last, which must be this one. */
    public Markup close(String name) {
        if (open.isEmpty() || !open.peek().equals(name)) {
            throw new IllegalStateException("</" + name + "> does not close " + (open.isEmpty() ? "anything" : "<" + open.peek() + ">"));
        }
        open.pop();
        drawings -= name.equals("svg") ? 1 : 0;
        out.append("</").append(name).append('>');
        return this;
    }

    /** An element that holds one text. */
    public Markup element(String name, String text, String... attributes) {
        return open(name, attributes).text(text).close(name);
    }

    /** Text on one line; a number keeps its percent sign or degrees beside it. */
    public Markup text(String text) {
        isolated(UNIT_APART.matcher(Harmless.line(text)).replaceAll("\u00a0"));
        return this;
    }

    /** Text whose line ends stay line ends; for elements that keep them. */
    public Markup lines(String text) {
        String[] lines = text.split("\\R", -1);
        for (int i = 0; i < lines.length; i++) {
            text(lines[i]);
            if (i < lines.length - 1) {
                out.append('\n');
            }
        }
        return this;
    }

    /** A line end in the document, for those who read its source. */
    public Markup newLine() {
        out.append('\n');
        return this;
    }

    /** Rules of appearance: the program's own text, which is not escaped; anything that could end the element is refused. */
    public Markup style(String rules) {
        if (rules.contains("<") || rules.contains("url(") || rules.contains("@import")) {
            throw new IllegalArgumentException("rules of appearance may neither end their element nor fetch anything");
        }
        out.append("<style>").append(rules).append("</style>");
        return this;
    }

    /** Runs of right-to-left letters are kept apart, so that they cannot reorder the numbers beside them. */
    private void isolated(String text) {
        int[] points = text.codePoints().toArray();
        int from = 0;
        while (from < points.length) {
            int start = from;
            while (start < points.length && !isRightToLeft(points[start])) {
                start++;
            }
            escape(new String(points, from, start - from));
            int end = endOfRun(points, start);
            if (end > start) {
                out.append(drawings > 0 ? "<tspan class=\"apart\">" : "<bdi>");
                escape(new String(points, start, end - start));
                out.append(drawings > 0 ? "</tspan>" : "</bdi>");
            }
            from = end;
        }
    }

    /** Behind the last right-to-left letter of a run that may hold spaces. */
    private static int endOfRun(int[] points, int start) {
        int end = start;
        for (int at = start; at < points.length && (isRightToLeft(points[at]) || Character.isWhitespace(points[at])); at++) {
            end = isRightToLeft(points[at]) ? at + 1 : end;
        }
        return end;
    }

    private static boolean isRightToLeft(int point) {
        byte direction = Character.getDirectionality(point);
        return direction == Character.DIRECTIONALITY_RIGHT_TO_LEFT || direction == Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC
                || direction == Character.DIRECTIONALITY_ARABIC_NUMBER;
    }

    private void escape(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&#39;");
                default -> out.append(c);
            }
        }
    }

    /**
     * The document.
     *
     * @throws IllegalStateException if an element is still open
     */
    public String document() {
        if (!open.isEmpty()) {
            throw new IllegalStateException("<" + open.peek() + "> is still open");
        }
        return out.toString();
    }
}
