package coldproof.report.text;

import static org.junit.jupiter.api.Assertions.assertEquals;

import coldproof.job.SafetyRules;
import coldproof.reason.safety.Phase;
import coldproof.reason.safety.SafetyRule;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The table in safety/README.md says what the rules say. To write it anew: mvn test -Dtest=SafetyReadmeTest -Dcoldproof.write=true */
class SafetyReadmeTest {
    private static final Path README = Path.of("safety", "README.md");
    private static final String BEGIN = "<!-- the table is written from the rules; do not edit below -->\n";

    @Test
    void theTableSaysWhatTheRulesSay() throws IOException {
        String text = Files.readString(README, StandardCharsets.UTF_8);
        String head = text.substring(0, text.indexOf(BEGIN) + BEGIN.length());
        String expected = head + table();
        if (Boolean.getBoolean("coldproof.write")) {
            Files.writeString(README, expected, StandardCharsets.UTF_8);
        }
        assertEquals(expected, Files.readString(README, StandardCharsets.UTF_8));
    }

    private static String table() {
        StringBuilder out = new StringBuilder();
        List<SafetyRule> rules = SafetyRules.bundled();
        for (Phase phase : Phase.values()) {
            out.append("\n## ").append(phase.title().substring(0, 1).toUpperCase(Locale.ROOT)).append(phase.title().substring(1)).append("\n\n")
                    .append("| rule | level | holds when | on the card | source |\n|---|---|---|---|---|\n");
            rules.stream().filter(rule -> rule.phase() == phase).forEach(rule -> out.append(row(rule)));
        }
        return out.toString();
    }

    private static String row(SafetyRule rule) {
        String when = rule.when().isEmpty() ? "always" : rule.when().stream().map(SafetyFigures::condition).collect(Collectors.joining("; "));
        String also = rule.also().isEmpty() ? "" : " (also " + rule.also().stream().map(Phase::title).collect(Collectors.joining(", ")) + ")";
        String level = rule.level().word() + (rule.mayBeSetAside() ? "" : ", never set aside");
        return "| `" + rule.id() + "` | " + level + " | " + when + also + " | " + rule.card() + " | " + rule.source() + " |\n";
    }
}
