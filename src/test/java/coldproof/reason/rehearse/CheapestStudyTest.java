package coldproof.reason.rehearse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.plan.Claim;
import coldproof.plan.Order;
import coldproof.plan.Plan;
import coldproof.quantity.Refused;
import coldproof.reason.sizing.CheapestStudy;
import coldproof.reason.sizing.PlanSize;
import coldproof.reason.sizing.PlannedStudy;
import coldproof.reason.sizing.SearchTerms;
import coldproof.reason.sizing.SizingAnswer;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The search fed from a plan, and what it advises rehearsed. */
class CheapestStudyTest {
    private static final RehearsalSettings SOME = new RehearsalSettings(4000, 11);
    private static final Workers MANY = (pieces, piece) -> IntStream.range(0, pieces).parallel().forEach(piece);

    static Stream<Plan> plans() {
        return Stream.of(Plans.sessions(4, 3, 2, 0.8, Claim.GAIN), Plans.sessions(5, 4, 1, 0.3, Claim.SAME), Plans.within(3, 2, Claim.GAIN));
    }

    /** Price and power of the plan's own layout, worked out by two ways that share no code but the t distribution. */
    @ParameterizedTest
    @MethodSource("plans")
    void theOwnLayoutIsPricedAndJudgedAsElsewhere(Plan plan) {
        PlannedStudy own = CheapestStudy.of(plan, SearchTerms.USUAL).planned();
        SizingAnswer size = PlanSize.of(plan, Plans.sheet(plan));
        assertEquals(size.size().orElseThrow().power(), own.power(), 1e-9);
        assertEquals(size.size().orElseThrow().trialsTotal(), own.trials());
        assertEquals(size.minutes().total().orElseThrow(), own.totalSeconds() / 60, 1e-9);
        assertEquals(size.minutes().outdoors().orElseThrow(), own.outdoorsSeconds() / 60, 1e-9);
    }

    @ParameterizedTest
    @MethodSource("plans")
    void theAdvisedLayoutReachesItsPowerWhenRehearsed(Plan plan) {
        CheapestStudy study = CheapestStudy.of(plan, SearchTerms.USUAL);
        PlannedStudy best = study.advice().best().orElseThrow();
        Plan advised = plan.with(study.layout(best));
        Script script = new Script(advised, Plans.sheet(advised), plan.compare().against().get(0));
        Stories stories = new Stories(script, plan.noise().orElseThrow());
        boolean gain = plan.claim() == Claim.GAIN;
        Counts counts = script.rehearse(gain ? stories.matters() : stories.noChange(), SOME, MANY);
        double reached = gain ? counts.changeSeen() : counts.samenessShown();
        assertEquals(best.power(), reached, 3.9 * Math.sqrt(best.power() * (1 - best.power()) / SOME.studies())); // wrong once in 10,000 seeds
        assertTrue(best.power() >= 0.9);
    }

    /**
     * Cold sessions cost four times warm ones. The cheapest equal allocation of fixed size that reaches 90 % against the advised allocation
     * with three looks, both rehearsed: as much power, within three deviations of the difference, for at most 60 % of the mean time outdoors.
     */
    @Test
    void theAdvisedPlanSavesTwoFifthsOfTheTimeOutdoors() {
        Plan plan = Plans.dearCold(2);
        CheapestStudy fixed = CheapestStudy.of(plan, SearchTerms.USUAL);
        Plan equal = plan.with(fixed.layout(fixed.advice().equal().orElseThrow()));
        Plan advised = new PlanChanges(plan, PlanSize.of(plan, Plans.sheet(plan))).best(3).stream().map(PlanChanges.Candidate::plan)
                .filter(one -> one.looks() == 3).findFirst().orElseThrow();
        for (boolean matters : new boolean[] {true, false}) {
            Script equalScript = new Script(equal, Plans.sheet(equal), "chilled");
            Script advisedScript = new Script(advised, Plans.sheet(advised), "chilled");
            Counts ofEqual = rehearse(equalScript, matters);
            Counts ofAdvised = rehearse(advisedScript, matters);
            double saved = 1 - advisedScript.spent(ofAdvised).outdoorMinutes() / equalScript.spent(ofEqual).outdoorMinutes();
            assertTrue(saved >= 0.4, "saved " + saved + " with " + advised.layout() + " against " + equal.layout());
            if (matters) {
                assertTrue(ofAdvised.changeSeen() > ofEqual.changeSeen() - 3 * Math.sqrt(2 * 0.09 / SOME.studies()), ofAdvised.changeSeen() + " " + ofEqual.changeSeen());
            }
        }
    }

    private static Counts rehearse(Script script, boolean matters) {
        Stories stories = new Stories(script, script.plan().noise().orElseThrow());
        return script.rehearse(matters ? stories.matters() : stories.noChange(), SOME, MANY);
    }

    @Test
    void aPlanInOneSittingIsRefusedWithWhatToDoInstead() {
        Plan plan = Plans.alternating(6, 6, Order.COUNTERBALANCED, Claim.GAIN);
        Refused refused = assertThrows(Refused.class, () -> CheapestStudy.of(plan, SearchTerms.USUAL));
        assertTrue(refused.problems().get(0).remedy().contains("coldproof runs"));
    }
}
