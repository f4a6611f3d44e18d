package coldproof.reason.safety;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** How much a caution asks of the person; in rising order. */
public enum SafetyLevel {
    /** Worth knowing. */
    NOTE("note"),
    /** Go on only after having seen to it. */
    CARE("care"),
    /** Do not go on while it holds. */
    STOP("stop");

    private final String word;

    SafetyLevel(String word) {
        this.word = word;
    }

    /** As written in rules, journal and JSON. */
    public String word() {
        return word;
    }

    /** The words of all levels, lowest first. */
    public static List<String> words() {
        return Arrays.stream(values()).map(SafetyLevel::word).toList();
    }

    /** The level of a word. */
    public static Optional<SafetyLevel> of(String word) {
        return Arrays.stream(values()).filter(level -> level.word.equals(word)).findFirst();
    }
}
