package coldproof.trace;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * One or two rows that no sensor can mean between their neighbours: a zero where all around is none, or a height that is gone a row later.
 * Such rows come from a reading that failed; they are taken for missing, and told of. Lows other than zero stay: work may pause for a moment.
 *
 * @param first entry of the first one
 * @param count how many there are
 * @param value what the first one read
 */
record LoneReadings(int first, int count, double value) {
    private static final double TOO_HIGH = 1.6; // times its neighbours: power and clocks do not rise and fall like this from row to row
    private static final double TOO_HOT = 15; // K above its neighbours: what is heavy enough to be measured does not cool like this
    private static final double WARM = 5; // °C: a zero between warmer neighbours is no temperature
    private static final double QUICK = 2.5; // s between rows: in two slower rows a device may really rise and fall
    private static final int AROUND = 2; // readings looked at on each side
    private static final double MOST = 0.05; // share of rows: what is more frequent is the device's own doing

    /** Clears lone readings of a channel in place; empty when there are none, or so many that they must be real. */
    static Optional<LoneReadings> clear(Channel channel, double[] values, double samplingSeconds) {
        boolean[] lone = new boolean[values.length];
        int first = -1;
        int count = 0;
        for (int i = 0; i < values.length; i++) {
            lone[i] = isLone(channel, values, i, samplingSeconds < QUICK);
            first = lone[i] && first < 0 ? i : first;
            count += lone[i] ? 1 : 0;
        }
        if (count == 0 || count > MOST * values.length) {
            return Optional.empty();
        }
        LoneReadings found = new LoneReadings(first, count, values[first]);
        for (int i = 0; i < values.length; i++) {
            values[i] = lone[i] ? Double.NaN : values[i];
        }
        return Optional.of(found);
    }

    private static boolean isLone(Channel channel, double[] values, int at, boolean quick) {
        if (Double.isNaN(values[at]) || !quick && values[at] != 0) {
            return false;
        }
        double[] around = neighbours(values, at);
        if (around.length < 2 * AROUND) {
            return false;
        }
        double low = around[0];
        double high = around[around.length - 2]; // the highest may be another lone one
        return switch (channel.kind()) {
            case POWER, CLOCK -> values[at] == 0 || quick && values[at] > TOO_HIGH * high;
            case TEMPERATURE -> values[at] == 0 && low > WARM || quick && values[at] > high + TOO_HOT;
            case ROTATION, SHARE, TIME -> false;
        };
    }

    /** The nearest two readings on each side, zeros left out, lowest first; fewer where there are none near. */
    private static double[] neighbours(double[] values, int at) {
        double[] around = new double[2 * AROUND];
        int count = 0;
        for (int side : new int[] {-1, 1}) {
            int found = 0;
            for (int i = at + side; i >= 0 && i < values.length && found < AROUND && Math.abs(i - at) <= 2 * AROUND; i += side) {
                if (!Double.isNaN(values[i]) && values[i] != 0) {
                    around[count++] = values[i];
                    found++;
                }
            }
        }
        double[] nearest = Arrays.copyOf(around, count);
        Arrays.sort(nearest);
        return nearest;
    }

    String text(Channel channel) {
        return String.format(Locale.ROOT, "%s reads %.4g between neighbours that differ: taken for missing%s", channel.label(), value,
                count == 1 ? "" : " (and " + (count - 1) + " more like it)");
    }
}
