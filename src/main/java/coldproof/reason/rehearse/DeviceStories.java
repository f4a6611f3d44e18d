package coldproof.reason.rehearse;

import coldproof.plan.NoiseAssumption;
import coldproof.plan.Position;
import coldproof.reason.rehearse.bench.Bench;
import coldproof.reason.rehearse.bench.BenchCondition;
import coldproof.reason.rehearse.bench.BenchParameters;
import coldproof.reason.rehearse.bench.InventedDevices;
import coldproof.reason.rehearse.bench.QuickScores;
import coldproof.reason.rehearse.bench.ScoreSpread;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The stories of an invented device held back by a known limiter, brought into the conditions of the plan, with the plan's noise. */
final class DeviceStories {
    private DeviceStories() {}

    /** One for a bench like the study's own and one for each limiter; none where the plan's levels mean nothing to a simulated device. */
    static List<Told> of(Script script, NoiseAssumption noise, Optional<BenchParameters> own) {
        List<Told> told = new ArrayList<>();
        own.ifPresent(bench -> add(told, script, noise, Story.Kind.OWN, "bench of this study", bench));
        add(told, script, noise, Story.Kind.HEAT, "held by heat", InventedDevices.trailLaptop());
        add(told, script, noise, Story.Kind.POWER, "held by a power limit", InventedDevices.shelfDesktop());
        add(told, script, noise, Story.Kind.CLOCK, "held by its clock", InventedDevices.steadyBox());
        add(told, script, noise, Story.Kind.SUPPLY, "held by its supply", InventedDevices.ferryTablet());
        add(told, script, noise, Story.Kind.WORKLOAD, "held by the workload", InventedDevices.waitingStation());
        return told;
    }

    private static void add(List<Told> told, Script script, NoiseAssumption noise, Story.Kind kind, String name, BenchParameters device) {
        if (PlannedConditions.differ(script.plan(), script.question().against(), device)) {
            BenchParameters noisy = device.with(ScoreSpread.of(noise.runCvPercent(), noise.sessionCvPercent()));
            told.add(told(script, kind, name, noisy));
        }
    }

    private static Told told(Script script, Story.Kind kind, String name, BenchParameters device) {
        Map<BenchCondition, Integer> places = new LinkedHashMap<>();
        List<Position> positions = script.sheet().positions();
        int[] condition = new int[positions.size()];
        for (int i = 0; i < condition.length; i++) {
            BenchCondition set = PlannedConditions.of(script.plan(), positions.get(i).levels(), device);
            places.putIfAbsent(set, places.size());
            condition[i] = places.get(set);
        }
        QuickScores scores = Bench.of(device).quickScores(List.copyOf(places.keySet()));
        return new Told(new Story(kind, name, trueLog(script, scores, condition)), scores, condition);
    }

    /** Mean of the changed level less that of the baseline, over the trials of each. */
    private static double trueLog(Script script, QuickScores scores, int[] condition) {
        double[] sum = new double[3];
        int[] count = new int[3];
        int[] levels = script.levels();
        for (int i = 0; i < levels.length; i++) {
            sum[levels[i]] += scores.logScore(condition[i]);
            count[levels[i]]++;
        }
        double change = sum[1] / count[1] - sum[0] / count[0];
        return Math.abs(change) < 1e-12 ? 0 : change; // rounding of the simulation, not a change
    }
}
