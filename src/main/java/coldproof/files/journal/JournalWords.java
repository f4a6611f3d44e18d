package coldproof.files.journal;

import java.util.Locale;

/** The words that constants are written with. */
final class JournalWords {
    private JournalWords() {}

    static String of(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT);
    }
}
