package coldproof.trace;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Units in which logs are written, each with the way to the unit used inside. */
public enum TraceUnit {
    /** Time. */
    SECOND("s", Kind.TIME, 1, 0, "s", "sec", "secs", "second", "seconds", "sek", "sekunde", "sekunden"),
    /** Time. */
    MILLISECOND("ms", Kind.TIME, 1e-3, 0, "ms", "msec", "millisecond", "milliseconds", "millis"),
    /** Time. */
    MICROSECOND("µs", Kind.TIME, 1e-6, 0, "µs", "us", "usec", "microsecond", "microseconds", "micros"),
    /** Time. */
    NANOSECOND("ns", Kind.TIME, 1e-9, 0, "ns", "nsec", "nanosecond", "nanoseconds", "nanos"),
    /** Time. */
    MINUTE("min", Kind.TIME, 60, 0, "min", "mins", "minute", "minutes", "minuten"),
    /** Time. */
    HOUR("h", Kind.TIME, 3600, 0, "h", "hr", "hrs", "hour", "hours", "stunden"),
    /** Time as spreadsheets count it. */
    DAY("d", Kind.TIME, 86_400, 0, "d", "day", "days"),
    /** Temperature. */
    CELSIUS("°C", Kind.TEMPERATURE, 1, 0, "°c", "c", "degc", "deg c", "celsius", "℃", "deg_c", "degrees c"),
    /** Temperature. */
    FAHRENHEIT("°F", Kind.TEMPERATURE, 1 / 1.8, -32 / 1.8, "°f", "f", "degf", "deg f", "fahrenheit", "℉", "deg_f", "degrees f"),
    /** Temperature. */
    KELVIN("K", Kind.TEMPERATURE, 1, -273.15, "k", "°k", "kelvin"),
    /** Temperature as kernels give it. */
    MILLICELSIUS("m°C", Kind.TEMPERATURE, 1e-3, 0, "m°c", "mc", "mdegc", "millicelsius", "millidegc", "mdeg"),
    /** Power. */
    WATT("W", Kind.POWER, 1, 0, "w", "watt", "watts"),
    /** Power. */
    MILLIWATT("mW", Kind.POWER, 1e-3, 0, "mw", "milliwatt", "milliwatts"),
    /** Power. */
    MICROWATT("µW", Kind.POWER, 1e-6, 0, "µw", "uw", "microwatt", "microwatts"),
    /** Clock rate. */
    MEGAHERTZ("MHz", Kind.CLOCK, 1, 0, "mhz"),
    /** Clock rate. */
    GIGAHERTZ("GHz", Kind.CLOCK, 1e3, 0, "ghz"),
    /** Clock rate. */
    KILOHERTZ("kHz", Kind.CLOCK, 1e-3, 0, "khz"),
    /** Clock rate. */
    HERTZ("Hz", Kind.CLOCK, 1e-6, 0, "hz"),
    /** Speed of a fan. */
    RPM("rpm", Kind.ROTATION, 1, 0, "rpm", "1/min", "min-1", "min^-1", "/min", "r/min", "rev/min", "u/min", "tr/min"),
    /** Share. */
    PERCENT("%", Kind.SHARE, 1, 0, "%", "pct", "percent", "prozent", "perc"),
    /** Share between 0 and 1. */
    FRACTION("1", Kind.SHARE, 100, 0, "fraction", "ratio");

    /** What a unit measures. */
    public enum Kind {
        /** In s inside. */
        TIME,
        /** In °C inside. */
        TEMPERATURE,
        /** In W inside. */
        POWER,
        /** In MHz inside. */
        CLOCK,
        /** In rpm inside. */
        ROTATION,
        /** In % inside. */
        SHARE
    }

    private final String symbol;
    private final Kind kind;
    private final double factor;
    private final double offset;
    private final List<String> words;

    TraceUnit(String symbol, Kind kind, double factor, double offset, String... words) {
        this.symbol = symbol;
        this.kind = kind;
        this.factor = factor;
        this.offset = offset;
        this.words = List.of(words);
    }

    /** As people write it. */
    public String symbol() {
        return symbol;
    }

    /** What it measures. */
    public Kind kind() {
        return kind;
    }

    double factor() {
        return factor;
    }

    double offset() {
        return offset;
    }

    /** The value in the unit used inside for this kind: times {@link #factor}, plus {@link #offset}. */
    public double toInside(double value) {
        return value * factor + offset;
    }

    /** The same value in another unit of the same kind. */
    public double to(TraceUnit other, double value) {
        return (toInside(value) - other.offset) / other.factor;
    }

    /** Whether a text names a unit of any kind, also of something that no channel measures, such as volts. */
    public static boolean isUnit(String text) {
        return named(text).isPresent() || ForeignUnits.contains(text, true);
    }

    /** The unit a text names, in brackets or not, in any case; empty when it names none. */
    public static Optional<TraceUnit> named(String text) {
        String bare = text.strip().toLowerCase(Locale.ROOT).replace('º', '°').replace('μ', 'µ').replace("° ", "°");
        if (bare.length() > 2 && "[({".indexOf(bare.charAt(0)) >= 0) {
            bare = bare.substring(1, bare.length() - 1).strip();
        }
        for (TraceUnit unit : values()) {
            if (unit.words.contains(bare)) {
                return Optional.of(unit);
            }
        }
        return Optional.empty();
    }
}
