package coldproof.report.text;

/** Makes text from a file harmless for a terminal. */
public final class Harmless {
    private Harmless() {}

    /**
     * The same text with every control character, escape, line separator and bidirectional mark and half character shown as a visible symbol, so that a name
     * or a note can neither move the cursor nor reorder a line.
     */
    public static String line(String text) {
        StringBuilder out = null;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            char shown = isHalf(text, i) ? '\ufffd' : shown(c);
            if (shown != c && out == null) {
                out = new StringBuilder(text.length()).append(text, 0, i);
            }
            if (out != null) {
                out.append(shown);
            }
        }
        return out == null ? text : out.toString();
    }

    /** Half a surrogate pair: it is no character and has no bytes in UTF-8. */
    private static boolean isHalf(String text, int i) {
        char c = text.charAt(i);
        if (Character.isHighSurrogate(c)) {
            return i + 1 == text.length() || !Character.isLowSurrogate(text.charAt(i + 1));
        }
        return Character.isLowSurrogate(c) && (i == 0 || !Character.isHighSurrogate(text.charAt(i - 1)));
    }

    private static char shown(char c) {
        if (c == '\t') {
            return ' ';
        }
        if (c < 0x20) {
            return (char) (0x2400 + c);
        }
        if (c == 0x7f) {
            return '\u2421';
        }
        boolean reorders = c >= '\u202a' && c <= '\u202e' || c >= '\u2066' && c <= '\u2069' || c == '\u200e' || c == '\u200f' || c == '\u061c';
        boolean breaksLine = c == '\u2028' || c == '\u2029' || c == '\u0085';
        boolean hidden = c >= 0x80 && c < 0xa0 || c == '\ufeff' || c >= '\u200b' && c <= '\u200d';
        return reorders || breaksLine || hidden ? '\ufffd' : c;
    }
}
