package coldproof.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.files.plan.PlanReader;
import coldproof.plan.Plan;
import coldproof.reason.sizing.Size;
import coldproof.reason.sizing.SizingAnswer;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Plans with two changes of one factor. Power: src/test/r/several-changes.R, R 4.2.2 with mvtnorm 1.1-3, the two-sided equicoordinate point c of the central t (pmvt, abseps 1e-9, by
 * uniroot) and {@code 1 - pt(c, df, ncp) + pt(-c, df, ncp)}; its quadrature holds c to about 1e-6, hence the tolerance.
 */
class SeveralChangesSizeTest {
    private static final double QUADRATURE = 2e-6;

    private static Plan trials(String layout) {
        return PlanReader.read("plan.yaml", ReadyPlans.text("fan-alternating").replace("layout: {trials: 12, order: counterbalanced}", layout)
                .replace("matters: 2 %", "matters: 3 %").replace("run to run: 1.0 %", "run to run: 1.5 %")
                .replace("levels: [auto, maximum]", "levels: [auto, middling, maximum]").replace("against: maximum", "against: [middling, maximum]"));
    }

    private static Size size(Plan plan) {
        return RunsJob.ofPlan(plan).size().orElseThrow();
    }

    @Test
    void trialsHavePowerUnderDunnettsAdjustment() {
        Size size = size(trials("layout: {trials: 6, order: counterbalanced}"));
        assertEquals(15, size.degreesOfFreedom());
        assertEquals(0.8233761591, size.power(), QUADRATURE);
        assertEquals(List.of(6, 6, 6), size.perLevel());
    }

    @Test
    void withUnequalNumbersThePowerIsThatOfTheChangeWithTheFewest() {
        Size size = size(trials("layout: {trials: {auto: 8, middling: 6, maximum: 5}, order: randomised}"));
        assertEquals(List.of(8, 6, 5), size.perLevel());
        assertEquals(16, size.degreesOfFreedom());
        assertEquals(0.8347791735, size.power(), QUADRATURE);
    }

    @Test
    void whatTheWantedPowerTakesIsFoundWithTheAdjustmentToo() {
        SizingAnswer answer = RunsJob.ofPlan(trials("layout: {trials: 6, order: counterbalanced}"));
        Size needed = answer.needed().orElseThrow();
        assertEquals(List.of(8, 8, 8), needed.perLevel());
        assertEquals(0.933403835, needed.power(), QUADRATURE);
        assertEquals(0.89016458, needed.powerOneFewer().orElseThrow(), QUADRATURE);
        assertTrue(answer.warnings().stream().anyMatch(warning -> warning.code().equals("several-changes")
                && warning.text().contains("all of them are seen in at least 65 of 100 studies")), answer.warnings().toString());
    }

    @Test
    void levelsSetPerTrialInSessionsShareOneFit() {
        Size size = size(trials("layout: {sessions: 4, trials per condition: 2, order: counterbalanced}"));
        assertEquals(18, size.degreesOfFreedom()); // 24 trials, 4 sessions, 2 changes
        assertEquals(0.928278931, size.power(), QUADRATURE);
    }

    @Test
    void wholeSessionsAreJudgedByTheirMeans() {
        Plan plan = PlanReader.read("plan.yaml", ReadyPlans.text("chilled-air").replace("compare: {factor: ambient, baseline: room, against: chilled}",
                        "compare: {factor: ambient, baseline: room, against: [cool, chilled]}")
                .replace("{room: 21 °C, chilled: -6 °C}", "{room: 21 °C, cool: 8 °C, chilled: -6 °C}").replace("sessions: {room: 4, chilled: 4}",
                        "sessions: {room: 5, cool: 5, chilled: 5}").replace("run to run: 1.2 %", "run to run: 1.5 %")
                .replace("set-up: {room: 5 min, chilled: 15 min}", "set-up: {room: 5 min, cool: 15 min, chilled: 15 min}"));
        Size size = size(plan);
        assertEquals(12, size.degreesOfFreedom());
        assertEquals(0.9464586166, size.power(), QUADRATURE);
    }

    @Test
    void samenessOfEachIsJudgedAtAnEqualShare() {
        Plan together = trials("layout: {trials: 6, order: counterbalanced}");
        Plan same = PlanReader.read("plan.yaml", ReadyPlans.text("fan-alternating").replace("claim: gain", "claim: same").replace("matters: 2 %", "matters: 3 %")
                .replace("trials: 12", "trials: 9").replace("levels: [auto, maximum]", "levels: [auto, middling, maximum]")
                .replace("against: maximum", "against: [middling, maximum]"));
        assertEquals(2.5, 100 * coldproof.reason.sizing.PlanPrecision.of(same, StudyView.sheet(same), same.noise().orElseThrow()).orElseThrow().errorRate(same), 1e-12);
        assertTrue(size(same).power() > 0.9, "power " + size(same).power());
        assertTrue(size(together).power() < size(trials("layout: {trials: 7, order: counterbalanced}")).power());
    }
}
