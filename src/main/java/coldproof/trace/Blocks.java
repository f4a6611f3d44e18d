package coldproof.trace;

import java.util.EnumMap;
import java.util.Map;

/**
 * The work as means of short blocks of equal length, from its start: small enough to keep for every trial of a study.
 *
 * @param stepSeconds length of a block in s, above 0
 * @param count number of blocks
 * @param channels for each measured channel a number a block; NaN where missing
 */
public record Blocks(double stepSeconds, int count, Map<Channel, double[]> channels) {
    private static final double SHORTEST = 2; // s
    private static final int MOST = 600;

    static Blocks of(Series series, Work work) {
        double step = Math.max(Math.max(SHORTEST, series.stepSeconds()), work.lengthSeconds() / MOST);
        int count = Math.max(1, (int) Math.floor(work.lengthSeconds() / step + 1e-9));
        Map<Channel, double[]> channels = new EnumMap<>(Channel.class);
        for (Channel channel : Channel.values()) {
            if (series.has(channel)) {
                channels.put(channel, means(series, work, channel, step, count));
            }
        }
        return new Blocks(step, count, channels);
    }

    private static double[] means(Series series, Work work, Channel channel, double step, int count) {
        double[] sums = new double[count];
        int[] counts = new int[count];
        for (int i = work.from(); i < work.to(); i++) {
            double value = series.value(channel, i);
            double at = series.seconds(i) - series.samplingSeconds() / 2 - work.startSeconds();
            int block = (int) Math.floor(at / step);
            if (!Double.isNaN(value) && block >= 0 && block < count && work.holds(series.seconds(i), series.samplingSeconds())) {
                sums[block] += value;
                counts[block]++;
            }
        }
        for (int i = 0; i < count; i++) {
            sums[i] = counts[i] == 0 ? Double.NaN : sums[i] / counts[i];
        }
        return sums;
    }

    /** Mean of a channel between two times from the start of the work; NaN when nothing was measured there. */
    public double mean(Channel channel, double fromSeconds, double toSeconds) {
        double[] values = channels.get(channel);
        double sum = 0;
        double weight = 0;
        int first = (int) Math.max(0, Math.floor(fromSeconds / stepSeconds) - 1); // a report asks for hundreds of stretches of each trial
        for (int i = first; values != null && i < count && i * stepSeconds < toSeconds; i++) {
            double overlap = Math.min(toSeconds, (i + 1) * stepSeconds) - Math.max(fromSeconds, i * stepSeconds);
            if (overlap > 0 && !Double.isNaN(values[i])) {
                sum += overlap * values[i];
                weight += overlap;
            }
        }
        return weight == 0 ? Double.NaN : sum / weight;
    }
}
