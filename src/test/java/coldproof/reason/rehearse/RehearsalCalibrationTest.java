package coldproof.reason.rehearse;

import static org.junit.jupiter.api.Assertions.assertEquals;

import coldproof.plan.Claim;
import coldproof.plan.Order;
import coldproof.plan.Plan;
import coldproof.reason.sizing.PlanSize;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Rehearsed power against exact power, and false alarms, over a grid of plans; each figure from 20,000 studies. */
class RehearsalCalibrationTest {
    private static final RehearsalSettings MANY_STUDIES = new RehearsalSettings(20_000, 97);
    private static final Workers MANY = (pieces, piece) -> IntStream.range(0, pieces).parallel().forEach(piece);
    private static final double DEVIATIONS = 4.2; // binomial deviations: one of 200 comparisons goes beyond by chance in 190 seeds

    private static List<Plan> grid() {
        List<Plan> plans = new ArrayList<>();
        for (Claim claim : Claim.values()) {
            for (double sessionCv : new double[] {0, 0.4, 0.8, 1.6}) {
                for (int[] sessions : new int[][] {{2, 2}, {3, 2}, {4, 3}, {5, 5}, {9, 3}}) {
                    for (int trials : new int[] {1, 2, 3}) {
                        plans.add(Plans.sessions(sessions[0], sessions[1], trials, sessionCv, claim));
                    }
                }
            }
            for (int units : new int[] {3, 4, 6, 9, 14}) {
                for (Order order : Order.values()) {
                    plans.add(Plans.alternating(units, units, order, claim));
                    plans.add(Plans.alternating(units + 2, units, Order.RANDOMISED, claim));
                    plans.add(Plans.paired(units, order, claim));
                }
                plans.add(Plans.within(Math.max(2, units / 2), 2, claim));
            }
        }
        return plans;
    }

    private static Counts counts(Plan plan, boolean matters) {
        Script script = new Script(plan, Plans.sheet(plan), plan.compare().against().get(0));
        Stories stories = new Stories(script, plan.noise().orElseThrow());
        return script.rehearse(matters ? stories.matters() : stories.noChange(), MANY_STUDIES, MANY);
    }

    private static double deviation(double share) {
        return DEVIATIONS * Math.sqrt(Math.max(share * (1 - share), 1e-4) / MANY_STUDIES.studies());
    }

    @Test
    @Tag("calibration")
    void rehearsedPowerIsExactPowerOverTheGrid() {
        List<String> apart = new ArrayList<>();
        double largest = 0;
        for (Plan plan : grid()) {
            boolean gain = plan.claim() == Claim.GAIN;
            double exact = PlanSize.of(plan, Plans.sheet(plan)).size().orElseThrow().power();
            Counts counts = counts(plan, gain);
            double rehearsed = gain ? counts.changeSeen() : counts.samenessShown();
            largest = Math.max(largest, Math.abs(rehearsed - exact));
            if (Math.abs(rehearsed - exact) > deviation(exact)) {
                apart.add(plan.layout() + " " + plan.claim() + " exact " + exact + " rehearsed " + rehearsed);
            }
        }
        System.out.println(grid().size() + " plans, largest distance " + largest);
        assertEquals(List.of(), apart);
    }

    /** No change seen where there is none, and no sameness where the change just matters, more than 5 times in 100, for all layouts and looks. */
    @Test
    @Tag("calibration")
    void falseAlarmsStayWithinTheAcceptedRateForEveryLayoutAndLookSchedule() {
        List<String> over = new ArrayList<>();
        double largest = 0;
        int plans = 0;
        List<Plan> grid = grid();
        for (int i = 0; i < grid.size(); i++) {
            for (int looks : new int[] {1, 2, 3, 5}) {
                if (looks > 1 && i % 4 != looks % 4) {
                    continue; // bounds of small studies are simulated anew for each plan: one in four for each number of looks
                }
                Plan plan = Plans.looking(grid.get(i), looks);
                boolean gain = plan.claim() == Claim.GAIN;
                Counts counts = counts(plan, !gain);
                double wrong = gain ? counts.changeSeen() : counts.wrongShare();
                largest = Math.max(largest, wrong);
                plans++;
                if (wrong > 0.05 + deviation(0.05)) {
                    over.add(plan.layout() + " " + plan.claim() + " looks " + looks + ": " + wrong);
                }
            }
        }
        System.out.println(plans + " plans, largest rate " + largest);
        assertEquals(List.of(), over);
    }
}
