package coldproof.files.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.job.SafetyRules;
import coldproof.physics.DeviceClass;
import coldproof.physics.Site;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.safety.Condition;
import coldproof.reason.safety.Reading;
import coldproof.reason.safety.SafetyLevel;
import coldproof.reason.safety.SafetyRule;
import coldproof.reason.safety.StudySafety;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StudySafetyReaderTest {
    private static StudySafety read(String text) {
        return StudySafetyReader.read("safety.yaml", text, SafetyRules.bundled());
    }

    private static List<Problem> problems(String text) {
        return assertThrows(Refused.class, () -> read(text)).problems();
    }

    private static SafetyRule rule(StudySafety safety, String id) {
        return safety.rules().stream().filter(rule -> rule.id().equals(id)).findFirst().orElseThrow();
    }

    @Test
    void readsPlaceDeviceAndBattery() {
        StudySafety safety = read("""
                device class: tower
                place: {latitude: 47.61, longitude: -12.3}
                battery energy: 52 Wh
                draw: 30 W
                """);
        assertEquals(DeviceClass.TOWER, safety.device());
        assertEquals(Optional.of(new Site(47.61, -12.3)), safety.site());
        assertEquals(52, safety.known().number(Reading.BATTERY_ENERGY).getAsDouble());
        assertEquals(SafetyRules.bundled(), safety.rules());
    }

    @Test
    void aHigherLevelOrAWiderConditionTightens() {
        StudySafety safety = read("""
                tighten:
                  - {rule: cold-drive, level: stop}
                  - {rule: below-storage-range, when: {air: below -10 °C}}
                """);
        assertEquals(SafetyLevel.STOP, rule(safety, "cold-drive").level());
        Condition.Range air = (Condition.Range) rule(safety, "below-storage-range").when().get(0);
        assertEquals(-10, air.high());
        assertTrue(safety.loosened().isEmpty());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"{rule: below-storage-range, when: {air: below -30 °C}}", "{rule: below-storage-range, level: care}",
        "{rule: below-storage-range, when: {power: battery}}", "{rule: below-storage-range, when: {air: at most -20 °C and above -60 °C}}"})
    void whatHoldsLessOftenOrAsksLessDoesNotTighten(String change) {
        assertTrue(problems("tighten:\n  - " + change + "\n").get(0).what().contains("this loosens"));
    }

    @Test
    void atMostIsWiderThanBelow() {
        read("tighten:\n  - {rule: below-storage-range, when: {air: at most -20 °C}}\n");
    }

    @Test
    void looseningNeedsAReason() {
        assertTrue(problems("loosen:\n  - {rule: below-storage-range, level: care}\n").get(0).what().contains("without a reason"));
        StudySafety safety = read("loosen:\n  - {rule: below-storage-range, when: {air: below -30 °C}, reason: the maker's limit}\n");
        assertEquals(List.of(new StudySafety.Loosened("below-storage-range", "the maker's limit")), safety.loosened());
    }

    @ParameterizedTest
    @CsvSource({"charge-frozen-cell", "charge-hot-cell", "mains-unprotected", "mains-in-the-wet", "wind-chill-stop", "power-on-condensing"})
    void someRulesCannotBeLoosened(String id) {
        assertTrue(problems("loosen:\n  - {rule: " + id + ", level: note, reason: x}\n").get(0).what().contains("cannot be loosened"));
    }

    @Test
    void aStudyAddsRulesOfItsOwn() {
        StudySafety safety = read("""
                rules:
                  - rule: glass-desk
                    phase: running
                    level: care
                    when: {air: below 5 °C}
                    card: Do not set it on the glass desk.
                    text: Use the wooden one.
                    why: Cold glass cracks.
                    source: common practice
                """);
        assertEquals("this study", rule(safety, "glass-desk").topic());
        assertEquals(SafetyRules.bundled().size() + 1, safety.rules().size());
    }

    @Test
    void aMisspeltRuleIsNamedWithTheNearest() {
        Problem problem = problems("tighten:\n  - {rule: cold-driv, level: stop}\n").get(0);
        assertEquals(List.of("cold-drive"), problem.nearest());
        assertEquals("safety.yaml:2:12", problem.where().text());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"place: {latitude: 91, longitude: 0}", "place: {latitude: north, longitude: 0}", "place: {longitude: 0}",
        "battery energy: 52", "battery energy: -5 Wh", "device class: toaster", "draw: 3 Wh", "unheard: 1", "tighten: cold-drive"})
    void whatMakesNoSenseIsRefused(String line) {
        assertTrue(!problems(line + "\n").isEmpty());
    }
}
