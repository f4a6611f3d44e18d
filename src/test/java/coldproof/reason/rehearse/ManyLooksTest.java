package coldproof.reason.rehearse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.plan.Claim;
import coldproof.plan.Plan;
import coldproof.reason.looks.LookPoint;
import coldproof.reason.looks.LookSchedule;
import coldproof.reason.verdict.Decision;
import coldproof.reason.verdict.LookedVerdicts;
import coldproof.reason.verdict.ManyLooks;
import coldproof.reason.verdict.Observation;
import coldproof.reason.verdict.RunOrders;
import coldproof.reason.verdict.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Rehearsed looks against looks taken for real, study by study. */
class ManyLooksTest {
    private static final int STUDIES = 10;

    @Test
    void theStudyEndsWhereItWouldHaveEnded() {
        Plan plan = Plans.looking(Plans.sessions(4, 4, 1, 0.8, Claim.GAIN), 2);
        Script script = new Script(plan, Plans.sheet(plan), "chilled");
        Told told = new Stories(script, plan.noise().orElseThrow()).matters();
        int early = 0;
        for (int study = 0; study < STUDIES; study++) {
            double[] logs = script.scores(told.scores(), told.condition(), new RehearsalSettings(STUDIES, 4).stream(study));
            ManyLooks.Ended quick = script.verdicts().judge(logs);
            LookPoint point = script.verdicts().looks().get(quick.look());
            for (LookPoint look : script.verdicts().looks().subList(0, quick.look() + 1)) {
                Verdict full = judge(script, logs, look.lastPosition());
                assertEquals(look == point ? quick.decision() : Decision.UNDECIDED, full.decision(), "study " + study + " at " + look);
                assertTrue(look != point || quick.word() == full.word(), "study " + study + " at " + look);
            }
            early += quick.look() == 0 ? 1 : 0;
        }
        assertTrue(early > 0 && early < STUDIES, early + " of " + STUDIES + " ended early: the test tells nothing");
    }

    private static Verdict judge(Script script, double[] logs, int until) {
        List<Observation> trials = new ArrayList<>();
        List<Observation> all = script.observations();
        for (int i = 0; i < until; i++) {
            trials.add(all.get(i).withScore(Math.exp(logs[i])));
        }
        Plan plan = script.plan();
        return LookedVerdicts.judge(List.of(script.question()), LookSchedule.of(plan, script.sheet()), trials, position -> position <= until, RunOrders.untested(),
                new SplittableRandom(plan.seed())).get(0).verdict();
    }
}
