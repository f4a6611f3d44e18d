package coldproof.machine.sensors;

import coldproof.trace.Channel;
import java.nio.file.Path;
import java.util.OptionalLong;

/** Power from a counter of energy in microjoules that starts again at 0 beyond its range. */
final class EnergyCounter implements Sensor {
    private static final double MICRO = 1e6;

    private final String heading;
    private final Channel channel;
    private final Path file;
    private final long range;
    private long lastEnergy = -1;
    private double lastSeconds;

    EnergyCounter(String heading, Channel channel, Path file, long range) {
        this.heading = heading;
        this.channel = channel;
        this.file = file;
        this.range = range;
    }

    @Override
    public String heading() {
        return heading;
    }

    @Override
    public Channel channel() {
        return channel;
    }

    @Override
    public double read(double seconds) {
        OptionalLong energy = KernelFile.number(file);
        double watts = Double.NaN;
        if (energy.isPresent() && lastEnergy >= 0 && seconds > lastSeconds) {
            watts = spent(lastEnergy, energy.getAsLong(), range) / MICRO / (seconds - lastSeconds);
        }
        lastEnergy = energy.orElse(-1);
        lastSeconds = seconds;
        return watts;
    }

    /** Microjoules between two readings of a counter that goes from 0 to its range; NaN where it fell without a known range. */
    static double spent(long before, long after, long range) {
        return after >= before ? after - before : range > 0 ? after + (range - before) : Double.NaN;
    }
}
