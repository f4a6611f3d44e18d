package coldproof.reason.rehearse.bench;

/**
 * Everything a simulated device and its bench need: short enough to be written as a page of YAML.
 *
 * @param name what the device is called, not blank
 * @param heat the way of the heat
 * @param silicon what a clock costs
 * @param limits what the firmware will not exceed
 * @param fan the fan
 * @param supply what feeds it
 * @param workload what is run
 * @param spread how scores scatter
 * @param weather how the air strays
 * @param sensors how telemetry falls short
 */
public record BenchParameters(String name, HeatNetwork heat, Silicon silicon, ControlLimits limits, Fan fan, Supply supply,
        Workload workload, ScoreSpread spread, Weather weather, Sensors sensors) {
    /** Refuses a nameless device. */
    public BenchParameters {
        if (name.isBlank()) {
            throw new IllegalArgumentException("a simulated device needs a name");
        }
    }

    /** The same bench with another scatter of scores. */
    public BenchParameters with(ScoreSpread other) {
        return new BenchParameters(name, heat, silicon, limits, fan, supply, workload, other, weather, sensors);
    }

    /** The same bench with other weather. */
    public BenchParameters with(Weather other) {
        return new BenchParameters(name, heat, silicon, limits, fan, supply, workload, spread, other, sensors);
    }

    /** The same bench with other sensors. */
    public BenchParameters with(Sensors other) {
        return new BenchParameters(name, heat, silicon, limits, fan, supply, workload, spread, weather, other);
    }

    /** The same bench with other work. */
    public BenchParameters with(Workload other) {
        return new BenchParameters(name, heat, silicon, limits, fan, supply, other, spread, weather, sensors);
    }

    /** The same bench with other limits. */
    public BenchParameters with(ControlLimits other) {
        return new BenchParameters(name, heat, silicon, other, fan, supply, workload, spread, weather, sensors);
    }

    /** The same bench, nothing left to chance: no scatter, still air, perfect sensors. */
    public BenchParameters withoutChance() {
        return with(ScoreSpread.NONE).with(Weather.STILL).with(Sensors.PERFECT);
    }
}
