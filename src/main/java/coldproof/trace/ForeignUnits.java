package coldproof.trace;

import java.util.Locale;
import java.util.Set;

/** Units of things that no channel measures: a column in volts is no temperature, whatever else its heading says. */
final class ForeignUnits {
    private static final Set<String> SHORT = Set.of("v", "a", "j", "b");
    private static final Set<String> LONG = Set.of("mv", "kv", "µv", "ma", "µa", "mah", "ah", "wh", "mwh", "kwh", "µwh", "mj", "kj", "µj", "uj", "ws", "volt", "volts", "amp",
            "amps", "ampere", "b/s", "kb/s", "mb/s", "gb/s", "kib/s", "mib/s", "gib/s", "kbit/s", "mbit/s", "gbit/s", "kbps", "mbps", "gbps", "kb", "mb", "gb", "tb",
            "kib", "mib", "gib", "mt/s", "gt/s", "fps", "frames/s", "bilder/s", "img/s", "1/s", "/s", "ops", "ops/s", "iops", "pa", "hpa", "kpa", "mbar", "bar", "db", "dba", "db(a)",
            "m/s", "km/h", "mph", "g/m³", "g/m3", "lx", "lux", "nm", "k/w", "°c/w", "w/k", "ohm", "mω", "ω", "score", "points", "cd/m²", "nits");

    private ForeignUnits() {}

    /**
     * Whether a text is such a unit.
     *
     * @param marked whether it stands behind a mark such as a bracket: single letters count only then
     */
    static boolean contains(String text, boolean marked) {
        String bare = text.strip().toLowerCase(Locale.ROOT).replace('μ', 'µ');
        if (bare.length() > 2 && "[({".indexOf(bare.charAt(0)) >= 0) {
            bare = bare.substring(1, bare.length() - 1).strip();
        }
        return LONG.contains(bare) || marked && SHORT.contains(bare);
    }
}
