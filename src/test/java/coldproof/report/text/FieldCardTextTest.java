package coldproof.report.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.job.SafetyRules;
import coldproof.physics.DeviceClass;
import coldproof.physics.TimeConstant;
import coldproof.reason.safety.Caution;
import coldproof.reason.safety.Cautions;
import coldproof.reason.safety.Phase;
import coldproof.reason.safety.Reading;
import coldproof.reason.safety.SafetyCard;
import coldproof.reason.safety.SafetyLevel;
import coldproof.reason.safety.SafetyRule;
import coldproof.reason.safety.SafetyScene;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class FieldCardTextTest {
    private static final List<SafetyRule> RULES = SafetyRules.bundled();
    private static final SafetyScene WINTER = SafetyScene.NOTHING.with(Reading.AIR, -9).with(Reading.HUMIDITY, 70).with(Reading.WIND, 3)
            .with(Reading.ROOM, 21).with(Reading.ROOM_HUMIDITY, 45);

    private static SafetyCard card(SafetyScene scene) {
        return Cautions.judge(RULES, scene, Optional.empty(), DeviceClass.LAPTOP.timeConstant());
    }

    /** The lines below a phase's heading up to the next heading. */
    private static String section(String page, Phase phase) {
        StringBuilder section = new StringBuilder();
        boolean inside = false;
        for (String line : page.split("\n")) {
            if (!line.startsWith(" ")) {
                inside = line.equals(phase.title().toUpperCase(Locale.ROOT));
            } else if (inside) {
                section.append(line).append('\n');
            }
        }
        return section.toString();
    }

    /** A scene in which every reading is drawn at random from its believable range, some left out. */
    private static SafetyScene drawn(SplittableRandom random) {
        SafetyScene scene = SafetyScene.NOTHING;
        for (Reading reading : Reading.taken()) {
            if (random.nextInt(5) == 0) {
                continue;
            }
            if (reading.dimension().isEmpty()) {
                scene = scene.with(reading, reading.words().get(random.nextInt(reading.words().size())));
            } else {
                double low = Math.max(-60, reading.least());
                double high = Math.min(reading == Reading.DAYLIGHT || reading == Reading.STAY || reading == Reading.SOAK ? 20_000 : 3500, reading.most());
                scene = scene.with(reading, low + random.nextDouble() * (high - low));
            }
        }
        return scene;
    }

    @Test
    void isOnePageWhateverHolds() {
        SplittableRandom random = new SplittableRandom(20260114);
        int most = 0;
        for (int i = 0; i < 3000; i++) {
            SafetyScene scene = drawn(random);
            SafetyCard card = card(scene);
            String page = FieldCardText.of(card, "Does chilled air lift the sustained render rate of the trail laptop in the yard?");
            assertTrue(page.lines().count() <= FieldCardText.LINES, () -> page.lines().count() + " lines with " + scene);
            assertTrue(page.lines().allMatch(line -> line.codePointCount(0, line.length()) <= 80), () -> page);
            for (Caution caution : card.cautions()) {
                boolean shown = section(page, caution.phase()).contains(caution.rule().card());
                assertTrue(shown || caution.level() == SafetyLevel.NOTE, () -> caution.rule().id() + " is missing with " + scene);
            }
            most = Math.max(most, (int) card.cautions().stream().filter(caution -> caution.level() != SafetyLevel.NOTE).count());
        }
        assertTrue(most >= 20, "the draws hardly try the page: at most " + most);
    }

    @Test
    void everyRuleStandsInItsPhase() {
        for (SafetyRule rule : RULES) {
            SafetyCard card = new SafetyCard(Optional.empty(), SafetyScene.NOTHING, Map.of(), List.of(new Caution(rule, rule.phase(), Map.of())),
                    List.of(), List.of(), Optional.empty(), Optional.empty(), false);
            String page = FieldCardText.of(card, "");
            for (Phase phase : Phase.values()) {
                assertEquals(phase == rule.phase(), section(page, phase).contains(rule.card()), rule.id() + " in " + phase.word());
            }
        }
    }

    @Test
    void theWayInComesStepByStep() {
        String page = FieldCardText.of(card(WINTER), "");
        int bag = page.indexOf(" 1 [ ] Off (not asleep)");
        int wait = page.indexOf(" 2 [ ] Wait, sealed, until ____:____: 102 min (41 at the earliest, likely 60)");
        int check = page.indexOf(" 3 [ ] Check");
        int power = page.indexOf(" 4 [ ] Only then power it on");
        int charge = page.indexOf(" 5 [ ] Charge only with cells above 0 °C");
        assertTrue(0 < bag && bag < wait && wait < check && check < power && power < charge, page);
        assertTrue(page.endsWith("here.\n") && page.contains("The maker's limits, local codes and licensed practice"), page);
    }

    /** By hand: dew point 8.61 °C, target 11.61 °C; ln((21 + 9) / (21 - 11.61)) = 1.162 of a time constant of 1000 s is 19.4 min. */
    @Test
    void aMeasuredTimeConstantGivesItsOwnWait() {
        SafetyCard card = Cautions.judge(RULES, WINTER, Optional.empty(), new TimeConstant(900, 1000, 1200, true));
        assertEquals(19.36, card.rewarm().orElseThrow().likelyMinutes(), 0.02);
        assertEquals(1.2 * 19.36, card.rewarm().orElseThrow().highMinutes(), 0.03);
    }

    @Test
    void aRoomTooDampIsSaidSo() {
        String page = FieldCardText.of(card(WINTER.with(Reading.ROOM_HUMIDITY, 95)), "");
        assertTrue(page.contains("This room is too damp"), page);
    }
}
