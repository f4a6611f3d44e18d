package coldproof.job;

import coldproof.files.rules.RulesReader;
import coldproof.reason.safety.SafetyRule;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** The safety rules that come with coldproof. */
public final class SafetyRules {
    /** The files they stand in, without ending, in the order of the field card. */
    private static final List<String> TOPICS = List.of("condensation", "water", "battery", "device", "mains", "person", "heat", "changes");

    private SafetyRules() {}

    /** All of them. */
    public static List<SafetyRule> bundled() {
        List<SafetyRule> rules = new ArrayList<>();
        TOPICS.forEach(topic -> rules.addAll(RulesReader.read("safety/" + topic + ".yaml", text(topic))));
        return rules;
    }

    /** The text of one file. */
    static String text(String topic) {
        try (InputStream in = SafetyRules.class.getResourceAsStream("/coldproof/safety/" + topic + ".yaml")) {
            if (in == null) {
                throw new IllegalStateException("the safety rules " + topic + " are missing from the program");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }
}
