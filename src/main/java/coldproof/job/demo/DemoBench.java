package coldproof.job.demo;

import coldproof.job.SafetyGate;
import coldproof.job.Taken;
import coldproof.plan.Factor;
import coldproof.plan.Level;
import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.reason.rehearse.bench.BenchCondition;
import coldproof.reason.rehearse.bench.Fan;
import coldproof.reason.rehearse.bench.Supply;
import coldproof.reason.safety.Reading;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Sets the simulated bench as a line of the run sheet says. */
final class DemoBench {
    private static final double ROOM_CELSIUS = 21;

    private DemoBench() {}

    /** What a tester would have measured before the first trial of a session, and signed. */
    static SafetyGate.Pass measured(BenchCondition condition) {
        List<Taken> taken = condition.outdoors()
                ? List.of(new Taken(Reading.AIR, "air", condition.airCelsius() + " C"), new Taken(Reading.HUMIDITY, "humidity", "74 %"),
                        new Taken(Reading.WIND, "wind", "2 m/s"), new Taken(Reading.ROOM, "room", "21 C"), new Taken(Reading.ROOM_HUMIDITY, "room humidity", "40 %"))
                : List.of(new Taken(Reading.AIR, "air", condition.airCelsius() + " C"), new Taken(Reading.HUMIDITY, "humidity", "40 %"));
        return new SafetyGate.Pass(taken, Optional.of("a simulated tester"), Map.of());
    }

    static BenchCondition condition(Plan plan, Position position) {
        double air = ROOM_CELSIUS;
        boolean outdoors = false;
        Fan.Setting fan = Fan.Setting.AUTOMATIC;
        for (Factor factor : plan.factors()) {
            String name = position.levels().get(factor.name());
            Level level = factor.levels().stream().filter(one -> one.name().equals(name)).findFirst().orElseThrow();
            air = level.air().isPresent() ? level.air().get().degrees() : air;
            outdoors |= plan.budget().outdoors().contains(name);
            fan = name.equals("maximum") ? Fan.Setting.MAXIMUM : fan;
        }
        BenchCondition condition = (outdoors ? BenchCondition.outdoors(air) : BenchCondition.room(air)).with(fan);
        return plan.start().powerSource().filter("battery"::equals).isPresent() ? condition.with(Supply.Source.BATTERY) : condition;
    }
}
