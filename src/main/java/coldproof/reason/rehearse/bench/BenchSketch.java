package coldproof.reason.rehearse.bench;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/**
 * A device known in part: what is known, and an invented device that lends the rest.
 *
 * @param name what the device is called, not blank
 * @param like the invented device that lends what is not known
 * @param facts what is known, in the unit of each fact's dimension; infinity for a limit there is not
 */
public record BenchSketch(String name, BenchParameters like, Map<BenchFact, Double> facts) {
    private static final double ROOM_CELSIUS = 21;

    /** Copies; refuses what is out of a fact's range. */
    public BenchSketch {
        Map<BenchFact, Double> copy = new EnumMap<>(BenchFact.class);
        copy.putAll(facts);
        copy.forEach((fact, value) -> {
            if (!(value == Double.POSITIVE_INFINITY && fact.mayBeNone())) {
                Ranges.within(fact.key(), value, fact.least(), fact.most());
            }
        });
        facts = Collections.unmodifiableMap(copy);
    }

    /**
     * The bench it makes.
     *
     * @throws IllegalArgumentException if the facts contradict one another, such as a lowest clock above the highest
     */
    public BenchParameters parameters() {
        return new BenchParameters(name, heat(), silicon(), limits(), like.fan(), supply(), workload(), like.spread(), like.weather(), like.sensors());
    }

    private double of(BenchFact fact, double otherwise) {
        return facts.getOrDefault(fact, otherwise);
    }

    /** All resistances and then all heat capacities are scaled alike; a chassis keeps its own slow ways. */
    private HeatNetwork heat() {
        HeatNetwork lent = like.heat();
        double resistance = lent.resistanceKelvinsPerWatt(like.fan().automaticShare(), ROOM_CELSIUS);
        double wanted = of(BenchFact.THERMAL_RESISTANCE, resistance);
        double more = wanted / resistance;
        double slower = facts.containsKey(BenchFact.TIME_CONSTANT) ? facts.get(BenchFact.TIME_CONSTANT) / timeConstant(like, more) : 1;
        return new HeatNetwork(lent.dieJoulesPerKelvin() * slower, lent.sinkJoulesPerKelvin() * slower, lent.chassisJoulesPerKelvin() * slower,
                lent.dieToSinkKelvinsPerWatt() * more, lent.stillWattsPerKelvin() / more, lent.fanWattsPerKelvin() / more, lent.fanExponent(),
                lent.airDensityExponent(), lent.sinkToChassisWattsPerKelvin() / more, lent.chassisToAirWattsPerKelvin() / more);
    }

    /** Of die and sink together against the air, the chassis as good as air while they warm up. */
    static double timeConstant(BenchParameters device, double resistanceScale) {
        HeatNetwork heat = device.heat();
        double toAir = heat.sinkToAirWattsPerKelvin(device.fan().automaticShare(), ROOM_CELSIUS) + heat.sinkToChassisWattsPerKelvin();
        return resistanceScale * (heat.dieJoulesPerKelvin() + heat.sinkJoulesPerKelvin()) / toAir;
    }

    private Silicon silicon() {
        Silicon lent = like.silicon();
        double highest = of(BenchFact.HIGHEST_CLOCK, lent.highestMegahertz());
        double lowest = of(BenchFact.LOWEST_CLOCK, Math.min(lent.lowestMegahertz(), highest / 4));
        double full = lent.baseWatts() + lent.dynamicWatts() + lent.leakageWatts();
        double more = of(BenchFact.FULL_POWER, full) / full;
        double step = Math.min(lent.stepMegahertz(), (highest - lowest) / 8);
        return new Silicon(lowest, highest, step, lent.baseWatts() * more, lent.dynamicWatts() * more, lent.leakageWatts() * more, lent.leakagePerKelvin(),
                lent.voltageFloor(), lent.voltageExponent());
    }

    private ControlLimits limits() {
        ControlLimits lent = like.limits();
        double longTerm = of(BenchFact.POWER_LIMIT, lent.longTermWatts());
        double shortTerm = Math.max(longTerm, of(BenchFact.BOOST_POWER, facts.containsKey(BenchFact.POWER_LIMIT) ? longTerm : lent.shortTermWatts()));
        return new ControlLimits(of(BenchFact.TEMPERATURE_LIMIT, lent.temperatureCelsius()), lent.heatControl(), longTerm, shortTerm,
                of(BenchFact.BOOST_AVERAGING, lent.averagingSeconds()), of(BenchFact.CLOCK_LIMIT, lent.clockCeilingMegahertz()));
    }

    private Supply supply() {
        Supply lent = like.supply();
        return new Supply(of(BenchFact.SUPPLY_LIMIT, lent.wallWatts()), of(BenchFact.BATTERY_LIMIT, lent.batteryWatts()), lent.batteryColdPerKelvin(),
                of(BenchFact.BATTERY_ENERGY, lent.batteryWattHours()), lent.cellSeconds(), of(BenchFact.REST_POWER, lent.restWatts()));
    }

    private Workload workload() {
        Workload lent = like.workload();
        return new Workload(of(BenchFact.WORK, lent.workSeconds()), lent.loops(), lent.leadSeconds(), lent.tailSeconds(), lent.rateAtHighest(),
                lent.rateExponent(), lent.rateCapShare(), lent.bound(), lent.activity(), lent.activitySwing());
    }
}
