package coldproof.reason.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.job.SafetyRules;
import coldproof.physics.DeviceClass;
import coldproof.quantity.Dimension;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every bundled rule at every threshold from both sides, in readings a person takes. */
class SafetyRulesTest {
    private static final List<SafetyRule> RULES = SafetyRules.bundled();

    /** A row of the table. */
    record Row(String rule, SafetyScene holds, SafetyScene not, String text) {
        @Override
        public String toString() {
            return text;
        }
    }

    static List<Row> rows() {
        try (InputStream in = SafetyRulesTest.class.getResourceAsStream("/coldproof/safety/thresholds.csv")) {
            List<Row> rows = new ArrayList<>();
            for (String line : new String(in.readAllBytes(), StandardCharsets.UTF_8).split("\n")) {
                if (!line.isBlank() && !line.startsWith("#")) {
                    String[] cells = line.split("\\|");
                    rows.add(new Row(cells[0].strip(), scene(cells[1]), scene(cells[2]), line));
                }
            }
            return rows;
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    private static SafetyScene scene(String cells) {
        SafetyScene scene = SafetyScene.NOTHING;
        for (String pair : cells.split(";")) {
            String[] parts = pair.strip().split("=");
            Reading reading = Reading.of(parts[0]).orElseThrow(() -> new AssertionError("no reading " + parts[0]));
            scene = reading.dimension().isPresent() ? scene.with(reading, Double.parseDouble(parts[1])) : scene.with(reading, parts[1]);
        }
        return scene;
    }

    static Stream<SafetyRule> rules() {
        return RULES.stream();
    }

    private static SafetyRule rule(String id) {
        return RULES.stream().filter(rule -> rule.id().equals(id)).findFirst().orElseThrow(() -> new AssertionError("no rule " + id));
    }

    private static boolean holds(SafetyRule rule, SafetyScene scene) {
        SafetyCard card = Cautions.judge(RULES, scene, Optional.of(rule.phase()), DeviceClass.LAPTOP.timeConstant());
        return card.cautions().stream().anyMatch(caution -> caution.rule().id().equals(rule.id()) && caution.phase() == rule.phase());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void holdsOnOneSideOfItsThresholdOnly(Row row) {
        SafetyRule rule = rule(row.rule);
        assertTrue(holds(rule, row.holds), "does not hold with " + row.holds);
        assertFalse(holds(rule, row.not), "holds with " + row.not);
    }

    @ParameterizedTest
    @MethodSource("rules")
    void everyThresholdOfEveryRuleStandsInTheTable(SafetyRule rule) {
        List<Row> rows = rows().stream().filter(row -> row.rule.equals(rule.id())).toList();
        for (Condition condition : rule.when()) {
            if (condition instanceof Condition.Range range) {
                range.lowEnd().ifPresent(end -> assertTrue(straddled(rows, rule, condition, end), "low end " + end + " of " + range));
                range.highEnd().ifPresent(end -> assertTrue(straddled(rows, rule, condition, end), "high end " + end + " of " + range));
            } else {
                assertTrue(rows.stream().anyMatch(row -> !condition.holds(values(rule, row.not).get(condition.reading()))), condition::toString);
            }
        }
    }

    /** Whether a row comes this close to the threshold on both sides. */
    private static boolean straddled(List<Row> rows, SafetyRule rule, Condition condition, double end) {
        double close = switch (condition.reading().dimension().orElseThrow()) {
            case TEMPERATURE -> 0.65; // the heat index moves by that much for one percent of humidity
            case TEMPERATURE_DIFFERENCE, PERCENT -> 0.11;
            case SPEED -> 0.02;
            default -> 1.01;
        };
        return rows.stream().anyMatch(row -> near(values(rule, row.holds), condition, end, close, true)
                && near(values(rule, row.not), condition, end, close, false));
    }

    private static boolean near(Map<Reading, Value> values, Condition condition, double end, double close, boolean holds) {
        Value value = values.get(condition.reading());
        return value != null && Math.abs(value.number().orElseThrow() - end) <= close && condition.holds(value) == holds;
    }

    private static Map<Reading, Value> values(SafetyRule rule, SafetyScene scene) {
        return Derivation.of(scene, Optional.of(rule.phase()));
    }

    @Test
    void namesAreUniqueAcrossTheFiles() {
        Set<String> names = new HashSet<>();
        RULES.forEach(rule -> assertTrue(names.add(rule.id()), rule.id()));
    }

    @Test
    void aRuleWithoutConditionsAlwaysHoldsAndIsOnlyANote() {
        List<SafetyRule> always = RULES.stream().filter(rule -> rule.when().isEmpty()).toList();
        assertFalse(always.isEmpty());
        for (SafetyRule rule : always) {
            assertEquals(SafetyLevel.NOTE, rule.level(), rule.id());
            assertTrue(holds(rule, SafetyScene.NOTHING), rule.id());
        }
    }

    @ParameterizedTest
    @MethodSource("rules")
    void everyRuleNamesWhereItComesFrom(SafetyRule rule) {
        assertTrue(rule.source().equals(SafetyRule.COMMON_PRACTICE) || rule.source().length() > 15, rule.source());
        assertTrue(rule.text().endsWith(".") && rule.why().endsWith(".") && rule.card().endsWith("."), rule.id());
    }

    @Test
    void everyPhaseHasRules() {
        for (Phase phase : Phase.values()) {
            assertTrue(RULES.stream().anyMatch(rule -> rule.phase() == phase), phase.word());
        }
    }

    @Test
    void everyDimensionOfAThresholdIsOneTheTableKnows() {
        RULES.stream().flatMap(rule -> rule.when().stream()).filter(Condition.Range.class::isInstance)
                .forEach(condition -> assertTrue(condition.reading().dimension().orElseThrow() != Dimension.CLOCK));
    }
}
