package coldproof.reason.rehearse.bench;

import coldproof.reason.rehearse.bench.BenchTrace.Channel;

/** Turns the true course of a trial into what sensors would have logged. */
final class Telemetry {
    private static final int CHANNELS = Channel.values().length;
    private final Sensors sensors;
    private final NormalDraws draws;
    private final double[][] columns;
    private final double stuckFromSeconds;
    private final double stuckToSeconds;
    private int size;
    private double elapsedSeconds;
    private double sampleFromSeconds;
    private double joules;
    private double cycles;
    private double hotReading;
    private double coolReading;
    private double airReading;
    private double frozenReading = Double.NaN;

    Telemetry(Sensors sensors, double logSeconds, double workFromSeconds, double workSeconds, NormalDraws draws) {
        this.sensors = sensors;
        this.draws = draws;
        int samples = (int) Math.floor(logSeconds / sensors.samplingSeconds() + 1e-6);
        columns = new double[CHANNELS][samples];
        boolean stuck = sensors.stuckChance() > 0 && draws.uniform() < sensors.stuckChance();
        stuckFromSeconds = stuck ? workFromSeconds + 0.7 * workSeconds * draws.uniform() : Double.POSITIVE_INFINITY;
        stuckToSeconds = stuckFromSeconds + workSeconds / 4;
    }

    /** What the slow sensors show before the first step. */
    void begin(Device device, double airCelsius) {
        hotReading = device.dieCelsius();
        coolReading = device.dieCelsius() - sensors.coolerKelvinsPerWatt() * device.packageWatts();
        airReading = airCelsius;
    }

    void step(Device device, double airCelsius) {
        double seconds = Device.STEP_SECONDS;
        elapsedSeconds += seconds;
        joules += device.packageWatts() * seconds;
        cycles += device.megahertz() * seconds;
        double dieFollows = follows(sensors.dieLagSeconds());
        hotReading += (device.dieCelsius() - hotReading) * dieFollows;
        coolReading += (device.dieCelsius() - sensors.coolerKelvinsPerWatt() * device.packageWatts() - coolReading) * dieFollows;
        airReading += (airCelsius - airReading) * follows(sensors.airLagSeconds());
        if (size < columns[0].length && elapsedSeconds >= (size + 1) * sensors.samplingSeconds() - 1e-6) {
            sample(device);
        }
    }

    BenchTrace trace() {
        return new BenchTrace(columns);
    }

    private void sample(Device device) {
        double interval = elapsedSeconds - sampleFromSeconds;
        set(Channel.SECONDS, elapsedSeconds + sensors.timeJitterSeconds() * noise(sensors.timeJitterSeconds()));
        boolean stuck = elapsedSeconds >= stuckFromSeconds && elapsedSeconds < stuckToSeconds;
        if (!stuck || Double.isNaN(frozenReading)) {
            frozenReading = die(hotReading);
        }
        set(Channel.DIE_CELSIUS, frozenReading);
        set(Channel.COOLER_DIE_CELSIUS, die(coolReading));
        set(Channel.PACKAGE_WATTS, rounded(joules / interval, sensors.powerStepWatts()));
        double clockSd = sensors.clockNoiseMegahertz();
        set(Channel.MEGAHERTZ, rounded(cycles / interval + clockSd * noise(clockSd), clockSd > 0 ? 1 : 0));
        set(Channel.FAN_RPM, Math.rint(device.fanRpm()));
        set(Channel.UTILISATION_PERCENT, 100 * device.utilisation());
        set(Channel.BATTERY_PERCENT, Math.rint(100 * device.batteryShare()));
        set(Channel.CELL_CELSIUS, rounded(device.cellCelsius(), 0.1));
        set(Channel.AIR_CELSIUS, rounded(airReading, sensors.airLagSeconds() > 0 ? 0.1 : 0));
        if (sensors.lostCellChance() > 0) {
            lose();
        }
        size++;
        sampleFromSeconds = elapsedSeconds;
        joules = 0;
        cycles = 0;
    }

    private void lose() {
        for (int channel = 1; channel < CHANNELS; channel++) { // the time is never lost
            if (draws.uniform() < sensors.lostCellChance()) {
                columns[channel][size] = Double.NaN;
            }
        }
    }

    private void set(Channel channel, double value) {
        columns[channel.ordinal()][size] = value;
    }

    private double die(double celsius) {
        double noisy = celsius + sensors.dieNoiseKelvins() * noise(sensors.dieNoiseKelvins());
        return Math.max(sensors.dieClipCelsius(), rounded(noisy, sensors.dieStepKelvins()));
    }

    private double noise(double sd) {
        return sd > 0 ? draws.next() : 0;
    }

    private static double rounded(double value, double step) {
        return step > 0 ? Math.rint(value / step) * step : value;
    }

    private static double follows(double lagSeconds) {
        return lagSeconds > 0 ? -Math.expm1(-Device.STEP_SECONDS / lagSeconds) : 1;
    }
}
