package coldproof.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.files.plan.PlanReader;
import coldproof.plan.Layout;
import coldproof.plan.Plan;
import coldproof.quantity.Refused;
import java.util.List;
import org.junit.jupiter.api.Test;

class PlanGuideTest {
    private static PlanGuide after(String... answers) {
        PlanGuide guide = new PlanGuide();
        List.of(answers).forEach(guide::answer);
        return guide;
    }

    private static Plan written(PlanGuide guide) {
        while (guide.step().isPresent()) {
            guide.answer("");
        }
        return PlanReader.read("plan", PlanJob.text(guide.plan().orElseThrow()));
    }

    @Test
    void enterAloneAnswersEveryQuestionWithAPlanThatReads() {
        Plan plan = written(new PlanGuide());
        assertEquals("ambient", plan.compare().factor());
        assertEquals(List.of("chilled"), plan.budget().outdoors());
        assertTrue(plan.noise().isEmpty());
    }

    @Test
    void aFactorThatIsEasyToChangeGetsAlternatingRunsAndNoQuestionsOfSittings() {
        PlanGuide guide = after("fan", "auto", "maximum", "", "build time", "s", "lower", "2", "", "1 %");
        assertEquals(GuideStep.TRIAL_TIME, guide.step().orElseThrow());
        guide.answer("4 min");
        guide.answer("10 min");
        assertEquals(GuideStep.DRAW, guide.step().orElseThrow());
        Plan plan = written(guide);
        assertEquals(Layout.Kind.ALTERNATING, plan.layout().kind());
        assertTrue(RunsJob.ofPlan(plan).size().orElseThrow().power() >= 0.9);
    }

    @Test
    void backTakesTheLastAnswerBackAsFarAsTheFirst() {
        PlanGuide guide = after("fan", "auto", "maximum");
        guide.answer("back");
        assertEquals(GuideStep.AGAINST, guide.step().orElseThrow());
        guide.answer("<");
        guide.answer("BACK");
        assertEquals(GuideStep.FACTOR, guide.step().orElseThrow());
        assertThrows(Refused.class, () -> guide.answer("back"));
    }

    @Test
    void aLargerSizeInTheTableHasMorePowerAndTakesLonger() {
        PlanGuide guide = after("ambient", "room = 21 °C", "chilled = -6 °C", "", "rate", "", "", "3 %", "", "1.2 %", "0.8 %", "5 min", "20 min", "15 min", "", "30 W");
        assertEquals(GuideStep.SIZE, guide.step().orElseThrow());
        List<PlanGuide.Choice> choices = guide.choices();
        PlanGuide.Choice small = choices.get(0);
        PlanGuide.Choice large = choices.get(choices.size() - 1);
        assertTrue(large.answer().size().orElseThrow().power() > small.answer().size().orElseThrow().power());
        assertTrue(large.answer().minutes().outdoors().orElseThrow() > small.answer().minutes().outdoors().orElseThrow());
        guide.answer("6 x 4");
        // 6 + 6 sittings of 4 runs of 5 min at 30 W: 48 runs, 4 h, 120 Wh.
        assertEquals(120, guide.wattHours().orElseThrow(), 1e-9);
        assertEquals(12 * 20 + 6 * 15 + 240, guide.sizing().orElseThrow().minutes().total().orElseThrow(), 1e-9);
    }

    @Test
    void wrongAnswersAreRefusedAndTheSameQuestionStands() {
        PlanGuide guide = after("ambient", "room = 21 °C");
        assertThrows(Refused.class, () -> guide.answer("room = -6 °C"));
        assertThrows(Refused.class, () -> guide.answer("= 5"));
        assertEquals(GuideStep.AGAINST, guide.step().orElseThrow());
        guide.answer("chilled");
        assertThrows(Refused.class, () -> guide.answer("perhaps"));
        List.of("no", "rate", "", "higher").forEach(guide::answer);
        for (String wrong : List.of("0", "-3", "three", "1,000.5", "9999 %")) {
            assertThrows(Refused.class, () -> guide.answer(wrong), wrong);
        }
        assertEquals(GuideStep.MATTERS, guide.step().orElseThrow());
    }
}
