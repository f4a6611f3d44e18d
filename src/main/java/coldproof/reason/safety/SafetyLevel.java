package coldproof.reason.safety;

import coldproof.quantity.ConstantWord;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** How much a caution asks of the person; in rising order. */
public enum SafetyLevel {
    /** Worth knowing. */
    NOTE,
    /** Go on only after having seen to it. */
    CARE,
    /** Do not go on while it holds. */
    STOP;

    /** As written in rules, journal and JSON. */
    public String word() {
        return ConstantWord.of(this);
    }

    /** The words of all levels, lowest first. */
    public static List<String> words() {
        return Arrays.stream(values()).map(SafetyLevel::word).toList();
    }

    /** The level of a word. */
    public static Optional<SafetyLevel> of(String word) {
        return Arrays.stream(values()).filter(level -> ConstantWord.is(level, word)).findFirst();
    }
}
