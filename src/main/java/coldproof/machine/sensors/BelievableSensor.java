package coldproof.machine.sensors;

import coldproof.trace.Channel;
import java.util.Locale;
import java.util.Optional;

/**
 * Passes on what a sensor says as far as it can be true; everything else is a missing value. A fan at 0 is believed once it has been seen
 * turning: until then nothing tells a fan that stands still from a header without one. A clock of the library is believed once it has shown a
 * second value: a nominal figure never does. Not thread-safe where either holds.
 */
final class BelievableSensor implements Sensor {
    private final Sensor sensor;
    private final boolean mustMove;
    private double first = Double.NaN;
    private boolean believed;

    BelievableSensor(Sensor sensor) {
        this.sensor = sensor;
        mustMove = sensor.channel() == Channel.FAN || sensor.channel() == Channel.CLOCK && sensor instanceof LibrarySensor;
    }

    @Override
    public String heading() {
        return sensor.heading();
    }

    @Override
    public Channel channel() {
        return sensor.channel();
    }

    @Override
    public double read(double seconds) {
        double value = sensor.read(seconds);
        if (!isPossible(channel(), value)) {
            return Double.NaN;
        }
        return mustMove && !moves(value) ? Double.NaN : value;
    }

    private boolean moves(double value) {
        first = Double.isNaN(first) ? value : first;
        believed |= channel() == Channel.FAN ? value > 0 : value != first;
        return believed;
    }

    @Override
    public boolean mayBeSilent() {
        return sensor.mayBeSilent();
    }

    @Override
    public Optional<String> remark() {
        if (!mustMove || believed || Double.isNaN(first)) {
            return sensor.remark();
        }
        return Optional.of(channel() == Channel.FAN
                ? heading() + " was 0 throughout: a fan that never ran, or a header without one; not recorded"
                : String.format(Locale.ROOT, "%s was %.0f throughout: a nominal figure, as in a virtual machine, or a clock that never moved; not recorded", heading(), first));
    }

    /** Whether a value can be one of a channel, in its unit; NaN cannot. */
    static boolean isPossible(Channel channel, double value) {
        return switch (channel) {
            // Sensors on a die are valid from 0 °C up, by the kernel's documentation of such drivers: 0 and less is no reading.
            case DIE_TEMPERATURE -> value > 0 && value <= 150;
            // Colder or hotter is a broken sensor, or one in another unit (common practice).
            case BOARD_TEMPERATURE, SURFACE_TEMPERATURE, BATTERY_TEMPERATURE, AMBIENT -> value >= -60 && value <= 150;
            // What runs draws something; a bench computer never draws 10 kW (common practice).
            case PACKAGE_POWER, SYSTEM_POWER -> value > 0 && value < 10_000;
            case CLOCK -> value > 0 && value < 100_000;
            case FAN -> value >= 0 && value < 65_535; // the last is what a register of 16 bit shows when nothing is there (common practice)
            case UTILISATION, BATTERY_CHARGE -> value >= 0 && value <= 100;
            case TIME -> value >= 0;
        };
    }
}
