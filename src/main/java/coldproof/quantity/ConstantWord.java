package coldproof.quantity;

import java.util.Locale;

/** The word of a constant in files and for scripts: its name in small letters, with hyphens. */
public final class ConstantWord {
    private ConstantWord() {}

    /** The word, such as {@code chain-broken} of {@code CHAIN_BROKEN}. */
    public static String of(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
