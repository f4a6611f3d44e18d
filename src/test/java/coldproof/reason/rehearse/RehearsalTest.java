package coldproof.reason.rehearse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.plan.Claim;
import coldproof.plan.Order;
import coldproof.plan.Plan;
import coldproof.reason.sizing.PlanSize;
import coldproof.reason.sizing.Warning;
import coldproof.reason.verdict.Decision;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class RehearsalTest {
    private static final Workers MANY = (pieces, piece) -> IntStream.range(0, pieces).parallel().forEach(piece);
    private static final RehearsalSettings SOME = new RehearsalSettings(3000, 7);

    private static RehearsalReport rehearse(Plan plan, RehearsalSettings settings, Workers workers) {
        return Rehearsal.of(plan, Plans.sheet(plan), plan.compare().against().get(0), settings, workers);
    }

    static Stream<Plan> everyLayout() {
        return Stream.of(Plans.sessions(4, 3, 2, 0.8, Claim.GAIN), Plans.sessions(5, 3, 1, 0.3, Claim.SAME), Plans.within(3, 2, Claim.GAIN),
                Plans.alternating(6, 6, Order.COUNTERBALANCED, Claim.GAIN), Plans.alternating(7, 5, Order.RANDOMISED, Claim.SAME),
                Plans.paired(6, Order.COUNTERBALANCED, Claim.GAIN), Plans.paired(7, Order.RANDOMISED, Claim.SAME));
    }

    static Stream<Plan> withLooks() {
        return Stream.of(Plans.looking(Plans.sessions(6, 6, 1, 0.8, Claim.GAIN), 3), Plans.looking(Plans.sessions(8, 5, 2, 0.8, Claim.SAME), 2),
                Plans.looking(Plans.alternating(12, 12, Order.RANDOMISED, Claim.GAIN), 4), Plans.looking(Plans.paired(12, Order.RANDOMISED, Claim.GAIN), 3),
                Plans.looking(Plans.within(6, 2, Claim.GAIN), 2));
    }

    /** A study that may end early spends less on average and decides about as often. */
    @ParameterizedTest
    @MethodSource("withLooks")
    void looksSaveTrialsAndCostLittle(Plan plan) {
        boolean gain = plan.claim() == Claim.GAIN;
        Counts looked = counts(plan, gain);
        Counts once = counts(Plans.looking(plan, 1), gain);
        Script script = new Script(plan, Plans.sheet(plan), plan.compare().against().get(0));
        assertTrue(script.spent(looked).trials() < script.sheet().positions().size() - 0.5, script.spent(looked) + " of " + script.sheet().positions().size());
        assertTrue(looked.share(Decision.UNDECIDED) < once.share(Decision.UNDECIDED) + 0.06, looked + " against " + once);
    }

    @Test
    void theSameSeedGivesTheSameReportOnAnyNumberOfThreads() {
        Plan plan = Plans.sessions(4, 3, 2, 0.8, Claim.GAIN);
        RehearsalReport alone = rehearse(plan, SOME, Workers.ONE);
        assertEquals(alone, rehearse(plan, SOME, MANY));
        assertNotEquals(alone.stories(), rehearse(plan, new RehearsalSettings(3000, 8), MANY).stories());
    }

    private static Counts counts(Plan plan, boolean matters) {
        Script script = new Script(plan, Plans.sheet(plan), plan.compare().against().get(0));
        Stories stories = new Stories(script, plan.noise().orElseThrow());
        return script.rehearse(matters ? stories.matters() : stories.noChange(), SOME, MANY);
    }

    /** Exact power is checked against other programs in PowerTest; 3.9 binomial deviations: wrong once in 10,000 seeds for each plan. */
    @ParameterizedTest
    @MethodSource("everyLayout")
    void rehearsedPowerIsExactPower(Plan plan) {
        boolean gain = plan.claim() == Claim.GAIN;
        double exact = PlanSize.of(plan, Plans.sheet(plan)).size().orElseThrow().power();
        Counts counts = counts(plan, gain);
        assertEquals(exact, gain ? counts.changeSeen() : counts.samenessShown(), 3.9 * Math.sqrt(exact * (1 - exact) / SOME.studies()));
    }

    /** The accepted rate is 5 %, whatever the layout; for sameness it holds at the edge of what matters. */
    @ParameterizedTest
    @MethodSource({"everyLayout", "withLooks"})
    void falseAlarmsStayWithinTheAcceptedRate(Plan plan) {
        boolean gain = plan.claim() == Claim.GAIN;
        Counts counts = counts(plan, !gain);
        double wrong = gain ? counts.changeSeen() : counts.wrongShare();
        assertTrue(wrong <= 0.05 + 3.1 * Math.sqrt(0.05 * 0.95 / SOME.studies()), wrong + " of " + plan.layout());
    }

    @Test
    void aPlanThatCannotDecideSaysWhy() {
        RehearsalReport report = rehearse(Plans.sessions(1, 3, 2, 0.8, Claim.GAIN), SOME, MANY);
        assertEquals(1, report.of(Story.Kind.TWICE).share(Decision.UNDECIDED));
        assertTrue(report.weaknesses().stream().map(Warning::code).toList().containsAll(List.of("no-verdict-possible", "often-undecided")));
    }

    @Test
    void theChangesOfferedReachTheWantedPowerWhenRehearsed() {
        RehearsalReport report = rehearse(Plans.sessions(3, 2, 2, 0.8, Claim.GAIN), SOME, MANY);
        assertTrue(report.changes().size() >= 2, () -> report.changes().toString());
        double planned = report.of(Story.Kind.MATTERS).changeSeen();
        RehearsalReport.PlanChange first = report.changes().get(0);
        assertTrue(first.matters().changeSeen() > 0.9 - 3 * Math.sqrt(0.09 / SOME.studies()) && planned < 0.8, planned + " " + first);
    }

    /** A drift of what matters over 12 trials moves the difference of AAAAAABBBBBB-like orders; mirrored blocks cancel it exactly. */
    @Test
    void mirroredBlocksShrugOffADrift() {
        RehearsalReport mirrored = rehearse(Plans.alternating(6, 6, Order.COUNTERBALANCED, Claim.GAIN), SOME, MANY);
        assertTrue(mirrored.of(Story.Kind.DRIFT).wrongShare() <= mirrored.of(Story.Kind.NO_CHANGE).wrongShare() + 0.01);
    }

    @Test
    void aDeviceHeldByItsClockGainsNothingFromCold() {
        RehearsalReport report = rehearse(Plans.sessions(4, 3, 2, 0.8, Claim.GAIN), SOME, MANY);
        double clock = report.stories().stream().filter(story -> story.story().kind() == Story.Kind.CLOCK).findFirst().orElseThrow().story().trueLog();
        double heat = report.stories().stream().filter(story -> story.story().kind() == Story.Kind.HEAT).findFirst().orElseThrow().story().trueLog();
        assertEquals(0, clock, 1e-9);
        assertTrue(heat > 0.02, "gain of the heat-limited laptop " + heat);
    }
}
