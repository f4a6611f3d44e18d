package coldproof.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.files.plan.PlanReader;
import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.reason.sizing.CheapestStudy;
import coldproof.reason.sizing.PlanAdvice;
import coldproof.reason.sizing.PlannedStudy;
import coldproof.reason.sizing.SearchTerms;
import coldproof.reason.sizing.Size;
import coldproof.reason.sizing.SizingAnswer;
import coldproof.reason.sizing.StudyLimits;
import coldproof.reason.sizing.StudyLimits.Limit;
import coldproof.reason.verdict.Verdict;
import coldproof.report.json.CheapestJson;
import coldproof.report.text.CheapestText;
import coldproof.study.Source;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The search for the cheapest layout where several changes are judged together. */
class CheapestOfSeveralTest {
    @TempDir
    Path folder;

    /** Two changes of the air; each session goes through two settings of the fan. */
    private static String airs() {
        return ReadyPlans.text("chilled-air").replace("against: chilled}", "against: [cool, chilled]}")
                .replace("{room: 21 °C, chilled: -6 °C}", "{room: 21 °C, cool: 8 °C, chilled: -6 °C}")
                .replace("sessions: {room: 4, chilled: 4}", "sessions: {room: 5, cool: 3, chilled: 4}").replace("run to run: 1.2 %", "run to run: 1.5 %")
                .replace("set-up: {room: 5 min, chilled: 15 min}", "set-up: {room: 5 min, cool: 15 min, chilled: 15 min}");
    }

    /** Changes of the fan inside sessions, beside other factors. */
    private static String fans(String levels, String against, String others, String sessions) {
        return ReadyPlans.text("fan-alternating").replace("levels: [auto, maximum]}", "levels: [" + levels + "]}" + others).replace("against: maximum", "against: [" + against + "]")
                .replace("layout: {trials: 12, order: counterbalanced}", "layout: {sessions: " + sessions + ", trials per condition: 2, order: counterbalanced}");
    }

    private static final String LID = "\n  lid: {change: per trial, levels: [open, shut]}";
    private static final String ROOM = "\n  room: {change: per session, levels: [loft, cellar]}";

    private static Plan plan(String text) {
        return PlanReader.read("plan.yaml", text);
    }

    private static SearchTerms upTo(int sessions, int trials) {
        return new SearchTerms(StudyLimits.NONE.with(Limit.SESSIONS_PER_LEVEL, sessions).with(Limit.TRIALS_PER_CONDITION, trials), SearchTerms.USUAL_WEIGHT, 0, 0, 0);
    }

    /**
     * Every layout gone through in R 4.2.2 with mvtnorm 1.1-3, src/test/r/several-changes.R. Its quadrature holds the bound to about 1e-6, hence the tolerance.
     */
    @Test
    void theCheapestLayoutIsThatOfAnotherProgram() {
        PlanAdvice advice = CheapestStudy.of(plan(airs()), upTo(8, 4)).advice();
        PlannedStudy best = advice.best().orElseThrow();
        assertEquals("8 3 2", best.baselineSessions() + " " + best.againstSessions() + " " + best.trialsPerCondition());
        assertEquals(0.9029950157, best.power(), 2e-6);
        assertEquals(1100, best.weightedSeconds() / 60, 1e-9);
        PlannedStudy next = advice.runnersUp().get(0);
        assertEquals("5 4 2", next.baselineSessions() + " " + next.againstSessions() + " " + next.trialsPerCondition());
    }

    private static List<PlannedStudy> advised(PlanAdvice advice) {
        List<PlannedStudy> all = new ArrayList<>(advice.runnersUp());
        advice.best().ifPresent(all::add);
        advice.equal().ifPresent(all::add);
        all.addAll(advice.lifted().values());
        return all;
    }

    /** The layout, put back into the plan, as {@code runs} sees it. */
    private static void isConfirmed(CheapestStudy study, PlannedStudy found) {
        SizingAnswer answer = RunsJob.ofPlan(study.plan().with(study.layout(found)));
        Size size = answer.size().orElseThrow();
        assertEquals(found.power(), size.power(), 1e-12, found.toString());
        assertEquals(found.degreesOfFreedom(), size.degreesOfFreedom());
        assertEquals(found.trials(), size.trialsTotal());
        assertEquals(study.perLevel(found), size.perLevel());
        assertEquals(found.totalSeconds() / 60, answer.minutes().total().orElseThrow(), 1e-9);
        assertEquals(found.outdoorsSeconds() / 60, answer.minutes().outdoors().orElseThrow(), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void whatIsAdvisedIsConfirmedWhenItIsPutIntoThePlan(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        String three = fans("auto, low, middling, maximum", "low, middling, maximum", random.nextBoolean() ? LID : "", "3");
        String two = fans("auto, middling, maximum", "middling, maximum", LID + ROOM, "{loft: 2, cellar: 1}");
        String text = random.nextInt(2) == 0 ? airs() : random.nextBoolean() ? three : two;
        text = text.replaceFirst("run to run: \\S+ %", "run to run: " + (0.5 + random.nextInt(12) / 10.0) + " %")
                .replace("claim: gain", random.nextInt(3) == 0 ? "claim: same" : "claim: gain");
        StudyLimits limits = random.nextBoolean() ? StudyLimits.NONE : StudyLimits.NONE.with(Limit.TIME_IN_ALL, random.nextDouble(20_000, 90_000));
        CheapestStudy study = CheapestStudy.of(plan(text), new SearchTerms(limits, random.nextDouble(1, 4), 0, 0, 0));
        double wanted = study.plan().errors().power();
        advised(study.advice()).forEach(found -> assertTrue(found.power() >= wanted, "seed " + seed + " " + found));
        advised(study.advice()).forEach(found -> isConfirmed(study, found));
        study.advice().frontier().stream().limit(5).forEach(found -> isConfirmed(study, found));
        assertTrue(study.advice().best().isPresent() || study.advice().strongest().orElseThrow().power() < wanted, "seed " + seed);
    }

    @Test
    void thePlanAsItIsStandsBesideWithItsUnequalNumbers() {
        CheapestStudy study = CheapestStudy.of(plan(airs()), upTo(6, 3));
        SizingAnswer runs = RunsJob.ofPlan(study.plan());
        assertEquals(runs.size().orElseThrow().power(), study.planned().power(), 1e-12);
        assertEquals(List.of(5, 3, 4), study.plannedPerLevel());
        assertEquals(runs.size().orElseThrow().trialsTotal(), study.planned().trials());
        assertEquals(runs.minutes().total().orElseThrow(), study.planned().totalSeconds() / 60, 1e-9);
        String text = CheapestText.of(study, 80);
        assertTrue(text.contains("each of 2 changes of 3 %, judged together,") && text.contains("3 to 4") && text.contains("35 min (cool), 35 min (chilled)"), text);
        assertTrue(text.lines().allMatch(line -> line.length() <= 80), text);
        PlannedStudy best = study.advice().best().orElseThrow();
        assertTrue(text.contains("sessions: {room: " + best.baselineSessions() + ", cool: " + best.againstSessions() + ", chilled: " + best.againstSessions() + "}"), text);
        String json = CheapestJson.of(study).toText();
        assertTrue(json.contains("\"asPlanned\":{\"perLevel\":[5,3,4],"), json);
    }

    /** Judging changes together costs runs, so it is never cheaper than judging one of them alone. */
    @Test
    void twoChangesTakeMoreThanOne() {
        Plan both = plan(fans("auto, middling, maximum", "middling, maximum", "", "3"));
        Plan one = plan(fans("auto, maximum", "maximum", "", "3"));
        PlannedStudy together = CheapestStudy.of(both, SearchTerms.USUAL).advice().best().orElseThrow();
        PlannedStudy alone = CheapestStudy.of(one, SearchTerms.USUAL).advice().best().orElseThrow();
        assertTrue(together.trials() / 3 > alone.trials() / 2, together + " " + alone);
    }

    /** The verdict takes the same effects out of the trials as the size does, whatever else is set beside the fan. */
    @ParameterizedTest
    @ValueSource(strings = {"maximum|", "maximum|lid", "maximum|room", "middling, maximum|", "middling, maximum|lid", "middling, maximum|room", "middling, maximum|lid room", "maximum|lid room"})
    void theDegreesOfFreedomAreThoseOfTheVerdict(String design) {
        String against = design.substring(0, design.indexOf('|'));
        String text = fans(against.contains(",") ? "auto, middling, maximum" : "auto, maximum", against, (design.contains("lid") ? LID : "") + (design.contains("room") ? ROOM : ""),
                design.contains("room") ? "{loft: 2, cellar: 2}" : "4");
        TestBench bench = new TestBench(folder.resolve("study"), text);
        SplittableRandom random = new SplittableRandom(3);
        try (BenchStudy study = BenchStudy.open(bench.folder(), bench.machine())) {
            for (Position position : study.view().sheet().positions()) {
                study.record(position, 100 + random.nextDouble(), List.of(), Optional.empty(), OffsetDateTime.parse("2026-01-14T12:00:00Z"), 60, Source.SIMULATED);
            }
        }
        StudyView view = StudyView.read(bench.folder());
        Verdict verdict = VerdictJob.ofStudy(view).get(0).verdict();
        assertEquals(verdict.estimate().orElseThrow().degreesOfFreedom(), RunsJob.ofStudy(view).size().orElseThrow().degreesOfFreedom());
    }
}
