package coldproof.reason.rehearse.bench;

import java.util.random.RandomGenerator;

/** Devices like a given one, with figures drawn anew: what is true of one invented device need not be true of its like. */
public final class DrawnDevices {
    private static final double FURTHEST_LOG = 0.18; // of each figure: 20 % up, 16 % down
    private static final double SLOWER_DIE = 1.2; // keeps the smallest die slow enough for the simulation's step

    private DrawnDevices() {}

    /** A device of the same kind: resistances, power of the silicon, limits and supply each moved by up to a fifth. */
    public static BenchParameters like(BenchParameters device, RandomGenerator random) {
        HeatNetwork heat = device.heat();
        Silicon silicon = device.silicon();
        ControlLimits limits = device.limits();
        Supply supply = device.supply();
        double longTerm = about(limits.longTermWatts(), random);
        double shortTerm = Math.max(longTerm, limits.shortTermWatts() * longTerm / limits.longTermWatts());
        HeatNetwork drawnHeat = new HeatNetwork(heat.dieJoulesPerKelvin() * SLOWER_DIE, about(heat.sinkJoulesPerKelvin(), random), heat.chassisJoulesPerKelvin(),
                about(heat.dieToSinkKelvinsPerWatt(), random), about(heat.stillWattsPerKelvin(), random), about(heat.fanWattsPerKelvin(), random),
                heat.fanExponent(), heat.airDensityExponent(), heat.sinkToChassisWattsPerKelvin(), heat.chassisToAirWattsPerKelvin());
        Silicon drawnSilicon = new Silicon(silicon.lowestMegahertz(), silicon.highestMegahertz(), silicon.stepMegahertz(), silicon.baseWatts(),
                about(silicon.dynamicWatts(), random), about(silicon.leakageWatts(), random), silicon.leakagePerKelvin(), silicon.voltageFloor(),
                silicon.voltageExponent());
        ControlLimits drawnLimits = new ControlLimits(limits.temperatureCelsius() - 10 * uniform(random), limits.heatControl(), longTerm, shortTerm,
                about(limits.averagingSeconds(), random), limits.clockCeilingMegahertz());
        Supply drawnSupply = new Supply(about(supply.wallWatts(), random), about(supply.batteryWatts(), random), supply.batteryColdPerKelvin(),
                supply.batteryWattHours(), supply.cellSeconds(), supply.restWatts());
        return new BenchParameters(device.name(), drawnHeat, drawnSilicon, drawnLimits, device.fan(), drawnSupply, device.workload(), device.spread(),
                device.weather(), device.sensors());
    }

    private static double about(double value, RandomGenerator random) {
        return value * Math.exp(FURTHEST_LOG * (2 * uniform(random) - 1));
    }

    private static double uniform(RandomGenerator random) {
        return (random.nextLong() >>> 11) * 0x1.0p-53;
    }
}
