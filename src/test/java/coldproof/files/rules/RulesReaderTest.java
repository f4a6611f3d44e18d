package coldproof.files.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.safety.Condition;
import coldproof.reason.safety.Phase;
import coldproof.reason.safety.Reading;
import coldproof.reason.safety.SafetyLevel;
import coldproof.reason.safety.SafetyRule;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RulesReaderTest {
    private static final String GOOD = """
            topic: test
            rules:
              - rule: cold-hands
                phase: out
                also: [running, in]
                level: care
                when: {air: "at least -7 °C and below 39,2 °F", outdoors: "yes"}
                card: Gloves.
                text: Wear
                  gloves.
                why: Metal is cold.
                source: common practice
            """;

    private static List<Problem> problems(String text) {
        return assertThrows(Refused.class, () -> RulesReader.read("test.yaml", text)).problems();
    }

    @Test
    void readsARule() {
        SafetyRule rule = RulesReader.read("test.yaml", GOOD).get(0);
        assertEquals(SafetyLevel.CARE, rule.level());
        assertEquals(List.of(Phase.RUNNING, Phase.IN), rule.also());
        assertEquals("Wear gloves.", rule.text());
        assertTrue(rule.mayBeSetAside());
        Condition.Range air = (Condition.Range) rule.when().get(0);
        assertEquals(-7, air.low());
        assertEquals(4, air.high(), 1e-12); // 39.2 °F is 4 °C
        assertTrue(air.lowIncluded() && !air.highIncluded());
        assertEquals(new Condition.OneOf(Reading.OUTDOORS, List.of("yes")), rule.when().get(1));
    }

    @ParameterizedTest(name = "{0} -> {1}")
    @CsvSource(delimiter = '|', value = {
        "level: care|level: caar|6:12|care", "phase: out|phase: aut|4:12|out", "air: \"at|eir: \"at|7:12|air", "source: common practice|sauce: x|12:5|source",
        "also: [running, in]|also: [runing]|5:12|running", "outdoors: \"yes\"|outdoors: \"yess\"|7:|yes"})
    void aWrongWordIsNamedWithItsPlaceAndTheNearestRightOne(String right, String wrong, String place, String nearest) {
        List<Problem> problems = problems(GOOD.replace(right, wrong));
        assertTrue(problems.stream().anyMatch(problem -> problem.where().text().startsWith("test.yaml:" + place) && problem.nearest().contains(nearest)),
                problems::toString);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"at least -7 °C and below 39,2 °F|around 3 °C|no range", "below 39,2 °F|below 39,2|without a unit",
        "below 39,2 °F|below -8 °C|no range", "below 39,2 °F|below 3 %|no temperature scale", "card: Gloves.|card: ''|lacks `card`",
        "rule: cold-hands|rule: Cold hands|no name of a rule", "also: [running, in]|also: [out]|twice", "why: Metal is cold.|why: ''|lacks `why`"})
    void whatMakesNoSenseIsRefused(String right, String wrong, String expected) {
        List<Problem> problems = problems(GOOD.replace(right, wrong));
        assertTrue(problems.stream().anyMatch(problem -> problem.what().contains(expected)), problems::toString);
    }

    @Test
    void aCardLineMustFitTheCard() {
        List<Problem> problems = problems(GOOD.replace("Gloves.", "G".repeat(71)));
        assertTrue(problems.get(0).what().contains("71 characters"), problems::toString);
    }

    @Test
    void theSameNameTwiceIsRefused() {
        String again = GOOD + GOOD.substring(GOOD.indexOf("  - rule"));
        assertTrue(problems(again).get(0).what().contains("stands twice"));
    }
}
