package coldproof.quantity;

import java.util.Locale;

/** The word of a constant in files and for scripts: its name in small letters, with hyphens. A constant that stands there keeps its name for ever. */
public final class ConstantWord {
    private ConstantWord() {}

    /** The word, such as {@code chain-broken} of {@code CHAIN_BROKEN}. */
    public static String of(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Whether a text is that word; makes no word, because long files ask it for every line. */
    public static boolean is(Enum<?> constant, String text) {
        String name = constant.name();
        boolean same = name.length() == text.length();
        for (int i = 0; same && i < name.length(); i++) {
            char c = name.charAt(i);
            same = text.charAt(i) == (c == '_' ? '-' : c >= 'A' && c <= 'Z' ? (char) (c - 'A' + 'a') : c);
        }
        return same;
    }
}
