package coldproof.reason.rehearse;

import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.plan.Claim;
import coldproof.plan.Plan;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The goal: 10,000 rehearsals of a plan of seven sessions in 5 s on two processors; here every story and change of it. */
class RehearsalBenchmarkTest {
    private static final Workers TWO = (pieces, piece) -> IntStream.range(0, pieces).parallel().forEach(piece);

    @Test
    @Tag("benchmark")
    void tenThousandRehearsalsOfSevenSessionsTakeSeconds() {
        Plan plan = Plans.sessions(4, 3, 2, 0.8, Claim.GAIN);
        long start = System.nanoTime();
        RehearsalReport report = Rehearsal.of(plan, Plans.sheet(plan), "chilled", new RehearsalSettings(10_000, 1), TWO);
        double seconds = (System.nanoTime() - start) / 1e9;
        System.out.println(report.stories().size() + " stories and " + report.changes().size() + " changes of 10,000 studies each: " + seconds + " s");
        assertTrue(seconds < 5, seconds + " s");
    }
}
