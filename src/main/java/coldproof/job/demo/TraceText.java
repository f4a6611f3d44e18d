package coldproof.job.demo;

import coldproof.reason.rehearse.bench.BenchTrace;
import coldproof.reason.rehearse.bench.BenchTrace.Channel;
import java.util.Locale;

/** A simulated trace as delimited text, as a logger might have written it: units in the heading, an empty cell where a reading was lost. */
final class TraceText {
    private static final String[] HEADINGS = {"time (s)", "die (°C)", "die 2 (°C)", "package power (W)", "clock (MHz)", "fan (rpm)", "utilisation (%)",
        "battery (%)", "cell (°C)", "air (°C)"};
    private static final String[] FORMATS = {"%.2f", "%.1f", "%.1f", "%.2f", "%.0f", "%.0f", "%.1f", "%.0f", "%.1f", "%.1f"};

    private TraceText() {}

    static String of(BenchTrace trace) {
        Channel[] channels = Channel.values();
        double[][] columns = new double[channels.length][];
        for (Channel channel : channels) {
            columns[channel.ordinal()] = trace.values(channel);
        }
        StringBuilder text = new StringBuilder(String.join(",", HEADINGS)).append('\n');
        for (int row = 0; row < trace.size(); row++) {
            for (int column = 0; column < columns.length; column++) {
                double reading = columns[column][row];
                text.append(column == 0 ? "" : ",").append(Double.isNaN(reading) ? "" : String.format(Locale.ROOT, FORMATS[column], reading));
            }
            text.append('\n');
        }
        return text.toString();
    }
}
