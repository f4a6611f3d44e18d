package coldproof.machine.sensors;

import java.util.Locale;
import java.util.Optional;

/** A sensor in a log, and until when it gave values. Not thread-safe. */
final class LogColumn {
    private final Sensor sensor;
    private double lastGivenSeconds = Double.NaN;
    private int silentRows;

    LogColumn(Sensor sensor) {
        this.sensor = sensor;
    }

    String heading() {
        return sensor.heading();
    }

    /** The next value in its unit; empty where there is none. */
    String cell(double seconds) {
        double value = sensor.read(seconds);
        if (Double.isNaN(value)) {
            silentRows++;
            return "";
        }
        silentRows = 0;
        lastGivenSeconds = seconds;
        return value == Math.rint(value) ? Long.toString((long) value) : String.format(Locale.ROOT, "%.3f", value);
    }

    /** Whether there was any value. */
    boolean gave() {
        return !Double.isNaN(lastGivenSeconds);
    }

    /** What to tell of it at the end: that it gave nothing, or no more from some time on; a single silent row at the end says nothing. */
    Optional<String> remark() {
        if (sensor.mayBeSilent()) {
            return sensor.remark();
        }
        if (!gave()) {
            return sensor.remark().or(() -> Optional.of(heading() + " gave no value"));
        }
        String lost = silentRows > 1 ? String.format(Locale.ROOT, "%s gave no value after %.0f s", heading(), lastGivenSeconds) : "";
        return lost.isEmpty() ? sensor.remark() : Optional.of(lost + sensor.remark().map(why -> "; " + why).orElse(""));
    }
}
