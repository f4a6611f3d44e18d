package coldproof.trace;

import java.util.Locale;
import java.util.Optional;

/**
 * A run of equal readings too long to be a measurement.
 *
 * @param from first entry of the run
 * @param always whether the channel never changes though it must
 * @param text what to tell
 */
record StuckSensor(int from, boolean always, String text) {
    private static final double LONG = 30; // s: longer than any display interval in use; common practice
    private static final double IDLE = 5; // %: a log without any work above it is not what anybody records
    private static final double LIVELY = 0.5; // share of steps that must change elsewhere for a standstill to be remarkable

    /** The longest standstill of a channel that otherwise changes; or a channel that never changes though it must when work begins. */
    static Optional<StuckSensor> find(Channel channel, double[] values, double[] seconds) {
        boolean mustMove = channel == Channel.DIE_TEMPERATURE || channel == Channel.PACKAGE_POWER || channel == Channel.SYSTEM_POWER;
        int longestFrom = 0;
        int longestTo = 0;
        int runFrom = -1;
        double last = Double.NaN;
        int changes = 0;
        int count = 0;
        for (int i = 0; i < values.length; i++) {
            if (Double.isNaN(values[i])) {
                continue;
            }
            if (count > 0 && values[i] != last) {
                changes++;
            }
            if (runFrom < 0 || values[i] != last) {
                runFrom = i;
            } else if (seconds[i] - seconds[runFrom] > seconds[longestTo] - seconds[longestFrom]) {
                longestFrom = runFrom;
                longestTo = i;
            }
            last = values[i];
            count++;
        }
        double still = values.length == 0 ? 0 : seconds[longestTo] - seconds[longestFrom];
        boolean idle = channel == Channel.UTILISATION && last < IDLE;
        if ((mustMove || idle) && count > 10 && changes == 0) {
            return Optional.of(new StuckSensor(longestFrom, true, channel.label() + " never changes: not a sensor, or stuck; it is not used"));
        }
        boolean charge = channel == Channel.BATTERY_CHARGE;
        if (!charge && still > LONG && changes > LIVELY * count) {
            return Optional.of(new StuckSensor(longestFrom, false,
                    String.format(Locale.ROOT, "%s stands still at %.4g for %.0f s while it moves elsewhere: perhaps stuck", channel.label(), values[longestTo], still)));
        }
        return Optional.empty();
    }
}
