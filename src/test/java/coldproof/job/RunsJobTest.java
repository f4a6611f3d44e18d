package coldproof.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.files.plan.PlanReader;
import coldproof.reason.sizing.Warning;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is said of a plan besides its size. */
class RunsJobTest {
    private static final String AIR = "levels: {room: 21 °C, chilled: -6 °C}";

    private static List<Warning> unitWarnings(String levels) {
        String plan = ReadyPlans.text("chilled-air");
        assertTrue(plan.contains(AIR), plan);
        return RunsJob.ofPlan(PlanReader.read("plan.yaml", plan.replace(AIR, levels))).warnings().stream()
                .filter(warning -> warning.code().equals("setting-without-unit")).toList();
    }

    @Test
    void anAirWithoutUnitIsPointedOut() {
        List<Warning> warnings = unitWarnings("levels: {room: 21, chilled: -6}");
        assertEquals(1, warnings.size());
        assertTrue(warnings.get(0).text().contains("The setting 21 of ambient room has no unit"), warnings.toString());
        assertEquals(1, unitWarnings("levels: {room: inside, chilled: '-6.5'}").size());
    }

    @Test
    void anAirWithItsUnitAndAWordAreNot() {
        assertEquals(List.of(), unitWarnings(AIR));
        assertEquals(List.of(), unitWarnings("levels: [room, chilled]"));
    }
}
