package coldproof.job.demo;

import coldproof.job.SafetyGate;
import coldproof.job.Taken;
import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.reason.rehearse.PlannedConditions;
import coldproof.reason.rehearse.bench.BenchCondition;
import coldproof.reason.rehearse.bench.BenchParameters;
import coldproof.reason.rehearse.bench.Supply;
import coldproof.reason.safety.Reading;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Sets the simulated bench as a line of the run sheet says. */
final class DemoBench {
    private DemoBench() {}

    /** What a tester would have measured before the first trial of a session, and signed. */
    static SafetyGate.Pass measured(BenchCondition condition) {
        List<Taken> taken = condition.outdoors()
                ? List.of(new Taken(Reading.AIR, "air", condition.airCelsius() + " C"), new Taken(Reading.HUMIDITY, "humidity", "74 %"),
                        new Taken(Reading.WIND, "wind", "2 m/s"), new Taken(Reading.ROOM, "room", "21 C"), new Taken(Reading.ROOM_HUMIDITY, "room humidity", "40 %"))
                : List.of(new Taken(Reading.AIR, "air", condition.airCelsius() + " C"), new Taken(Reading.HUMIDITY, "humidity", "40 %"));
        return new SafetyGate.Pass(taken, Optional.of("a simulated tester"), Map.of());
    }

    /** As a rehearsal sets it, on the battery where the plan starts every trial there. */
    static BenchCondition condition(Plan plan, Position position, BenchParameters device) {
        BenchCondition condition = PlannedConditions.of(plan, position.levels(), device);
        return plan.start().powerSource().filter("battery"::equals).isPresent() ? condition.with(Supply.Source.BATTERY) : condition;
    }
}
