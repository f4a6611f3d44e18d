package coldproof.files.bench;

import coldproof.reason.rehearse.bench.BenchSketch;
import java.util.Locale;

/** Writes a bench as {@link BenchReader} reads it. */
public final class BenchWriter {
    private BenchWriter() {}

    /**
     * The text of a bench.
     *
     * @param remark a line of comment above it
     */
    public static String text(BenchSketch sketch, String remark) {
        StringBuilder out = new StringBuilder("# " + remark.replace('\n', ' ') + "\n" + BenchReader.VERSION + ": 1\nname: \""
                + sketch.name().replace("\\", "\\\\").replace("\"", "\\\"") + "\"\nlike: " + sketch.like().name() + "\n");
        sketch.facts().forEach((fact, value) -> out.append(fact.key()).append(": ")
                .append(Double.isInfinite(value) ? BenchReader.NONE : String.format(Locale.ROOT, "%.6g", value).replaceFirst("(\\.\\d*?)0+$", "$1").replaceFirst("\\.$", "")
                        + " " + fact.dimension().unit())
                .append('\n'));
        return out.toString();
    }
}
