package coldproof.report.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Round numbers along an axis: multiples of 1, 2 or 5 times a power of ten, as near to the wanted number of them as those steps allow.
 *
 * @param values the numbers, rising
 * @param decimals how many decimals tell them apart
 */
public record Ticks(List<Double> values, int decimals) {
    /** Copies. */
    public Ticks {
        values = List.copyOf(values);
    }

    /**
     * Round numbers inside a range.
     *
     * @param low smallest, finite
     * @param high largest, finite and above {@code low}
     * @param wanted about how many, 2 or more
     */
    public static Ticks inside(double low, double high, int wanted) {
        if (!(low < high) || !Double.isFinite(high - low) || wanted < 2) {
            throw new IllegalArgumentException("no ticks between " + low + " and " + high + ", " + wanted + " wanted");
        }
        double rough = (high - low) / wanted;
        int power = (int) Math.floor(Math.log10(rough));
        double base = rough / Math.pow(10, power);
        int times = base < Math.sqrt(2) ? 1 : base < Math.sqrt(10) ? 2 : base < Math.sqrt(50) ? 5 : 10;
        double step = times * Math.pow(10, power);
        List<Double> values = new ArrayList<>();
        double slack = 1e-9 * (high - low); // so that an end that is a round number in all but its last bits has its tick
        long first = (long) Math.ceil((low - slack) / step);
        long last = (long) Math.floor((high + slack) / step);
        for (long i = first; i <= last; i++) {
            values.add(i * step);
        }
        return new Ticks(values, Math.max(0, -(times == 10 ? power + 1 : power)));
    }

    /** The number as it stands at the axis. */
    public String label(double value) {
        if (Math.abs(value) >= 1e7 || decimals > 6) {
            return String.format(Locale.ROOT, "%.3g", value);
        }
        String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
        return text.startsWith("-") ? text.matches("-0(\\.0+)?") ? text.substring(1) : "\u2212" + text.substring(1) : text;
    }
}
