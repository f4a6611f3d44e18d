package coldproof.reason.rehearse;

import coldproof.reason.rehearse.bench.Bench;
import coldproof.reason.rehearse.bench.BenchCondition;
import coldproof.reason.rehearse.bench.BenchFact;
import coldproof.reason.rehearse.bench.BenchParameters;
import coldproof.reason.rehearse.bench.BenchSketch;
import coldproof.reason.rehearse.bench.BenchTruth;
import coldproof.reason.rehearse.bench.InventedDevices;
import coldproof.trace.Boost;
import coldproof.trace.Channel;
import coldproof.trace.Level;
import coldproof.trace.TraceSummary;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * A simulated bench that behaves like the traces of a pilot. What stands still while it works is taken for a limit: power, or the die's
 * temperature when it is hot, or the clock when neither stands still. The rest is scaled so that sustained power, clock and thermal resistance
 * are those of the traces. One condition shows one limiter: what holds under another is lent by the device it is like.
 */
public final class BenchFit {
    private static final double STILL = 0.012; // share of the level: a held power wanders less (2 W of 160 W); invented, tried on the simulator
    private static final double STILL_KELVINS = 1; // a held die wanders less; likewise
    private static final double ROOM = 1.15; // a limit that was not met lies at least so much above what was drawn: unknown, so near
    private static final double ROOM_KELVINS = 5; // likewise above what the die reached
    private static final double HOT_CELSIUS = 80; // die temperatures held by firmware lie above (common practice)
    private static final double ROOM_CELSIUS = 21; // where the traces do not know the air
    private static final int ROUNDS = 8; // each halves the rest at least
    private static final double IDLE_SHARE = 0.15; // of the sustained power, before the work begins
    private static final List<BenchParameters> LENDERS = List.of(InventedDevices.trailLaptop(), InventedDevices.workshopLaptop(),
            InventedDevices.shelfDesktop()); // those that neither supply nor workload nor a ceiling of the clock holds back
    private final String name;
    private final List<TraceSummary> traces;
    private final Map<BenchFact, Double> facts = new EnumMap<>(BenchFact.class);

    private BenchFit(String name, List<TraceSummary> traces) {
        this.name = name;
        this.traces = traces;
    }

    /**
     * Fits a bench.
     *
     * @param name of the device
     * @param traces of baseline trials, one or more
     * @throws IllegalArgumentException if there is no trace with package power and die temperature
     */
    public static BenchSketch of(String name, List<TraceSummary> traces) {
        List<TraceSummary> useful = traces.stream()
                .filter(trace -> trace.mean(Channel.PACKAGE_POWER).isPresent() && trace.mean(Channel.DIE_TEMPERATURE).isPresent()).toList();
        if (useful.isEmpty()) {
            throw new IllegalArgumentException("no trace has both package power and die temperature");
        }
        return new BenchFit(name, useful).sketch();
    }

    private BenchSketch sketch() {
        double watts = mean(Channel.PACKAGE_POWER);
        double die = mean(Channel.DIE_TEMPERATURE);
        double clock = mean(Channel.CLOCK);
        average(traces.stream().map(trace -> trace.thermal().kelvinsPerWatt()).toList()).ifPresent(value -> put(BenchFact.THERMAL_RESISTANCE, value));
        average(traces.stream().map(trace -> trace.thermal().timeConstantSeconds()).toList()).ifPresent(value -> put(BenchFact.TIME_CONSTANT, value));
        average(traces.stream().map(trace -> trace.work().lengthSeconds()).toList()).ifPresent(value -> put(BenchFact.WORK, value));
        BenchParameters like = nearest(watts);
        boolean heatHeld = die > HOT_CELSIUS && wander(Channel.DIE_TEMPERATURE) < STILL_KELVINS;
        boolean powerHeld = !heatHeld && wander(Channel.PACKAGE_POWER) < STILL * watts
                && !(wander(Channel.CLOCK) / clock < wander(Channel.PACKAGE_POWER) / watts); // a load that swings moves what is not held
        put(BenchFact.TEMPERATURE_LIMIT, heatHeld ? die : Math.max(like.limits().temperatureCelsius(), die + ROOM_KELVINS));
        put(BenchFact.POWER_LIMIT, powerHeld ? watts : Math.max(like.limits().longTermWatts(), ROOM * watts));
        boost(powerHeld ? watts : facts.get(BenchFact.POWER_LIMIT));
        if (!heatHeld && !powerHeld && clock > 0) {
            put(BenchFact.CLOCK_LIMIT, clock);
        }
        if (clock > 0) {
            clocks(like, clock, watts);
        }
        for (int round = 0; round < ROUNDS; round++) {
            adjust(like, watts, clock);
        }
        return new BenchSketch(name, like, facts);
    }

    /** Simulates what has been fitted so far, and scales resistance and power by what the traces showed against it. */
    private void adjust(BenchParameters like, double watts, double clock) {
        double air = average(traces.stream().map(trace -> trace.thermal().airCelsius()).toList()).orElse(ROOM_CELSIUS);
        BenchTruth truth = Bench.of(new BenchSketch(name, like, facts).parameters()).truth(BenchCondition.room(air));
        OptionalDouble resistance = average(traces.stream().map(trace -> trace.thermal().kelvinsPerWatt()).toList());
        if (resistance.isPresent()) {
            put(BenchFact.THERMAL_RESISTANCE, facts.get(BenchFact.THERMAL_RESISTANCE) * resistance.getAsDouble() / truth.windowResistanceKelvinsPerWatt());
        }
        if (clock > 0) {
            put(BenchFact.FULL_POWER, facts.get(BenchFact.FULL_POWER) * watts / truth.sustainedWatts()
                    * Math.pow(truth.sustainedMegahertz() / clock, 1 + 2 * like.silicon().voltageExponent()));
        }
    }

    private void put(BenchFact fact, double value) {
        facts.put(fact, Math.max(fact.least(), Math.min(fact.most(), value)));
    }

    private double mean(Channel channel) {
        return average(traces.stream().map(trace -> trace.mean(channel).orElse(Double.NaN)).toList()).orElse(Double.NaN);
    }

    private static OptionalDouble average(List<Double> values) {
        return values.stream().filter(Double::isFinite).mapToDouble(Double::doubleValue).average();
    }

    private double wander(Channel channel) {
        List<Double> wander = new ArrayList<>();
        for (TraceSummary trace : traces) {
            trace.level(channel).map(Level::wander).ifPresent(wander::add);
        }
        return average(wander).orElse(Double.POSITIVE_INFINITY);
    }

    /** The limit looks at an exponential average that starts near idle: it meets the limit after {@code tau log((boost - idle) / (boost - limit))}. */
    private void boost(double limit) {
        double seconds = average(traces.stream().map(TraceSummary::boost).map(Boost::seconds).toList()).orElse(0);
        double watts = average(traces.stream().map(TraceSummary::boost).map(Boost::watts).toList()).orElse(limit);
        if (seconds > 0 && watts > limit) {
            put(BenchFact.BOOST_POWER, watts);
            put(BenchFact.BOOST_AVERAGING, seconds / Math.log((watts - IDLE_SHARE * limit) / (watts - limit)));
        } else {
            put(BenchFact.BOOST_POWER, limit);
        }
    }

    /** The invented device whose limit of power is nearest. */
    private static BenchParameters nearest(double watts) {
        BenchParameters nearest = InventedDevices.trailLaptop();
        for (BenchParameters device : LENDERS) {
            if (distance(device, watts) < distance(nearest, watts)) {
                nearest = device;
            }
        }
        return nearest;
    }

    private static double distance(BenchParameters device, double watts) {
        return Math.abs(Math.log(device.limits().longTermWatts() / watts));
    }

    /** The highest clock is that of the phases seen, or as far above the sustained one as the lender's; full power follows from the sustained point. */
    private void clocks(BenchParameters like, double clock, double watts) {
        double seen = traces.stream().flatMap(trace -> trace.phases().stream()).mapToDouble(phase -> phase.means().getOrDefault(Channel.CLOCK, 0.0)).max().orElse(clock);
        double highest = Math.max(seen, clock * 1.05);
        put(BenchFact.HIGHEST_CLOCK, highest);
        double exponent = 1 + 2 * like.silicon().voltageExponent();
        double full = like.silicon().baseWatts() + like.silicon().dynamicWatts() + like.silicon().leakageWatts();
        double base = like.silicon().baseWatts() / full;
        double share = base + (1 - base) * like.workload().activity() * Math.pow(clock / highest, exponent);
        put(BenchFact.FULL_POWER, watts / share);
    }
}
