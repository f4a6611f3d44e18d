package coldproof.reason.limiter;

import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.reason.rehearse.bench.Bench;
import coldproof.reason.rehearse.bench.BenchCondition;
import coldproof.reason.rehearse.bench.BenchParameters;
import coldproof.reason.rehearse.bench.BenchSession;
import coldproof.reason.rehearse.bench.BenchStudy;
import coldproof.reason.rehearse.bench.InventedDevices;
import coldproof.trace.Channel;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Logs that lack a channel: the limiter may be left open, but none is named wrongly. Truth: the simulator's, for each condition. */
class LackingChannelsTest {
    @ParameterizedTest
    @EnumSource(names = {"DIE_TEMPERATURE", "PACKAGE_POWER", "CLOCK", "FAN", "UTILISATION", "BATTERY_CHARGE", "AMBIENT"})
    void whatIsLackingIsNotMadeUpFor(Channel lacking) {
        List<String> wrong = new ArrayList<>();
        int named = 0;
        for (BenchParameters device : InventedDevices.all()) {
            Map<String, BenchCondition> conditions = new LinkedHashMap<>(Map.of("room", BenchCondition.room(21), "frost", BenchCondition.outdoors(-8)));
            for (LimiterAnswer.OfCondition answer : explain(device, conditions, Set.of(lacking)).conditions()) {
                String truth = Bench.of(device).truth(conditions.get(answer.levels().get("ambient"))).limiter().map(Enum::name).orElse("MIXED");
                named += answer.limiter() == Limiter.UNCLEAR ? 0 : 1;
                if (answer.limiter() != Limiter.UNCLEAR && !answer.limiter().name().equals(truth)) {
                    wrong.add(device.name() + " " + answer.levels() + " truth " + truth + ", said " + answer);
                }
            }
        }
        assertTrue(wrong.isEmpty(), () -> String.join("\n", wrong));
        assertTrue(named > 0 || lacking == Channel.PACKAGE_POWER, "nothing was named at all");
    }

    private static LimiterAnswer explain(BenchParameters device, Map<String, BenchCondition> conditions, Set<Channel> lacking) {
        BenchStudy study = Bench.of(device).study(new SplittableRandom(11));
        List<LimiterTrial> trials = new ArrayList<>();
        for (int round = 0; round < 2; round++) {
            conditions.forEach((name, condition) -> {
                BenchSession session = study.session(condition);
                for (int i = 0; i < 3; i++) {
                    trials.add(BenchLimiterTrials.of(session.run(condition), Map.of("ambient", name), name + trials.size() / 3, trials.size(), true, true, lacking));
                }
            });
        }
        return Limiters.explain(trials, KnownLimits.NONE);
    }
}
