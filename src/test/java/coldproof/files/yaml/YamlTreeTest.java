package coldproof.files.yaml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class YamlTreeTest {
    /** YAML 1.2.2 (2021), section 10.2: only true, false, null and numbers are not strings; for us even they stay as written. */
    @ParameterizedTest
    @ValueSource(strings = {"off", "no", "yes", "y", "1:30", "017", "0x1F", "1e3", "~", "null", "true", "21 °C", ".inf", "2026-01-14"})
    void everyScalarStaysTheTextThatWasWritten(String word) {
        YamlNode.Mapping root = (YamlNode.Mapping) YamlTree.read("plan.yaml", "fan: " + word + "\n");
        assertEquals(word, ((YamlNode.Scalar) root.entries().get("fan")).text());
    }

    @ParameterizedTest(name = "[{index}]")
    @CsvSource(delimiter = '|', value = {
        "'a: 1\nb: 2\na: 3'|3|1|stands twice", "'a: &x 1\nb: *x'|2|4|alias", "'a: [1, 2'|1|0|not YAML", "'a: !!binary x'|1|0|",
        "'a: 1\n---\nb: 2'|3|0|second document", "''|1|0|empty", "'a: *nobody'|1|0|",
    })
    void refusesWithAPlace(String text, int line, int column, String what) {
        Problem problem = assertThrows(Refused.class, () -> YamlTree.read("plan.yaml", text)).problems().get(0);
        assertEquals(line, problem.where().line(), problem.toString());
        assertTrue(column == 0 || column == problem.where().column(), problem.toString());
        assertTrue(what == null || problem.what().contains(what), problem.toString());
    }

    /** Found by mutation: the scanner's buffer of 1025 places, full up to the first half of a character of two, ended the program. */
    @Test
    void aPictureCharacterMayStandAtAnyPlace() {
        for (int before = 0; before < 2200; before++) {
            String word = "x".repeat(before) + "\uD83E\uDDCA" + "\uD83E\uDDCA melts";
            YamlNode.Mapping root = (YamlNode.Mapping) YamlTree.read("plan.yaml", "title: " + word + "\nfan: auto\n");
            assertEquals(word, ((YamlNode.Scalar) root.entries().get("title")).text(), () -> word.length() + " characters");
            assertEquals(2, root.entries().get("fan").place().line());
        }
    }

    @Test
    void halfACharacterIsRefusedAtAnyPlace() {
        for (int before = 1000; before < 1050; before++) {
            String text = "title: " + "x".repeat(before) + "\uD83E";
            assertThrows(Refused.class, () -> YamlTree.read("plan.yaml", text));
            assertThrows(Refused.class, () -> YamlTree.read("plan.yaml", text + " melts\n"));
        }
    }

    @Test
    void deepNestingIsRefusedNotOverflown() {
        String text = "[".repeat(5000);
        assertThrows(Refused.class, () -> YamlTree.read("plan.yaml", text));
        String closed = "[".repeat(500) + "]".repeat(500);
        assertThrows(Refused.class, () -> YamlTree.read("plan.yaml", closed));
    }

    @Test
    void anUnknownKeyIsNamedWithItsNearest() {
        List<Problem> problems = new ArrayList<>();
        YamlForm form = YamlForm.of(YamlTree.read("plan.yaml", "title: x\nmaters: 3 %\n"), "the plan", problems);
        form.text("title", "title: ...");
        form.optionalText("matters");
        form.finish();
        assertEquals(1, problems.size());
        assertEquals(List.of("matters"), problems.get(0).nearest());
        assertEquals(2, problems.get(0).where().line());
    }
}
