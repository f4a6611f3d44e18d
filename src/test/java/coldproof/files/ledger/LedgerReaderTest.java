package coldproof.files.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.ledger.LedgerFigure;
import coldproof.reason.ledger.LedgerSheet;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LedgerReaderTest {
    private static final String HEAD = """
            coldproof ledger: 1
            title: a test
            reference: one
            workloads:
              render: {unit: frames/s, better: higher}
            devices:
              one: {figures: {render: {value: "50 frames/s", plus or minus: 1, source: own test}}}
            """;

    private static LedgerSheet read(String more) {
        return LedgerReader.read("ledger.yaml", HEAD + more, (study, levels, workload) -> new LedgerFigure(72, OptionalDouble.of(1), 3,
                java.util.OptionalInt.of(4), study + levels, "", true));
    }

    private static LedgerFigure second(String figure) {
        return read("  two: {figures: {render: " + figure + "}}\n").devices().get(1).figures().get("render");
    }

    /** The t and normal points are those of printed tables: 2.776 at 4 df and 1.960 (NIST/SEMATECH e-Handbook, 1.3.6.7.2 and 1.3.6.7.1). */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "{value: 60, repeats: 4, spread: 2.4, source: s} | 2 | 3", // 2.4 / sqrt(4) of 60
        "{value: 60, repeats: 4, spread: 4 %, source: s} | 2 | 3",
        "{value: 60, plus or minus: 1.96 %, source: s} | 1.0000 | Infinity",
        "{value: 60, plus or minus: 2.776 %, repeats: 5, source: s} | 1.0000 | 4",
        "{value: '60,0', standard uncertainty: 0.6 frames/s, source: s} | 1 | Infinity",
        "{value: 60, plus or minus: 1 %, coverage: 68.27 %, source: s} | 1.0000 | Infinity",
    })
    void everyWayOfStatingAnUncertaintyIsRead(String figure, double percent, double freedom) {
        assertEquals(percent, second(figure).uncertaintyPercent().orElseThrow(), 2e-4); // the points are printed with four digits
        assertEquals(freedom, second(figure).degreesOfFreedom());
    }

    @Test
    void aValueAloneHasNoUncertainty() {
        assertFalse(second("{value: 60, source: a poster}").isStated());
    }

    @Test
    void aStudyIsAskedForItsFigure() {
        assertEquals("../render{ambient=chilled}", second("{study: ../render, condition: {ambient: chilled}}").source());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "{value: 0, source: s}|`value` is \"0\"", "{value: fast, source: s}|not a number", "{value: 60}|lacks `source`", "{source: s}|lacks `value`",
        "{value: 60, spread: 1, source: s}|without `repeats`", "{value: 60, spread: 1, repeats: 3, plus or minus: 2, source: s}|in 2 ways",
        "{value: 60, source: s, coverage: 95 %}|without `plus or minus`", "{value: 60, source: s, date: yesterday}|`date` is",
        "{value: 60, source: s, sprd: 1}|unknown key \"sprd\"", "{values: [60], source: s}|no list of two", "{values: [60, -1], source: s}|a value is \"-1\"",
        "{value: 60, plus or minus: 100 %, source: s}|`plus or minus` is \"100 %\"", "{value: 1e400, source: s}|too large",
    })
    void aWrongFigureIsRefusedAtItsPlace(String figure, String what) {
        Refused refused = assertThrows(Refused.class, () -> second(figure));
        Problem problem = refused.problems().get(0);
        assertEquals(8, problem.where().line(), refused.problems().toString());
        assertTrue(problem.what().contains(what), refused.problems().toString());
    }

    @Test
    void severalMistakesAreReportedTogether() {
        String text = "reference: on\ntitle: t\ncoldproof ledger: 2\nworkloads:\n  render: {better: more}\ndevices:\n  one: {price: 3, figures: {rendr: {value: 1}}}\n"
                + "  two: {constraint: cap, power: 0 W, figures: {}}\n";
        List<String> found = assertThrows(Refused.class, () -> LedgerReader.read("l", text, (study, levels, workload) -> null)).problems().stream().map(Problem::what).toList();
        assertTrue(found.size() >= 6, found::toString);
        assertTrue(found.stream().anyMatch(what -> what.contains("\"rendr\" is no workload")), found::toString);
        assertTrue(found.stream().anyMatch(what -> what.contains("no device is called \"on\"")), found::toString);
    }

    @Test
    void pricesInTwoCurrenciesAreNotCompared() {
        Refused refused = assertThrows(Refused.class, () -> LedgerReader.read("l", HEAD.replace("one: {", "one: {price: 5 crowns, ")
                + "  two: {price: 6 marks, figures: {render: {value: 60, source: s}}}\n", (study, levels, workload) -> null));
        assertTrue(refused.problems().get(0).expected().contains("crowns"), refused.problems().toString());
    }
}
