package coldproof.trace;

import java.util.Arrays;
import java.util.Optional;

/** Tells what a column measures and in which unit, from its heading, its line of units and the size of its numbers. */
final class UnitGuess {
    private UnitGuess() {}

    /** What the column measures; empty when nothing tells. */
    static Optional<TraceUnit.Kind> kindOf(ColumnSample column, HeadingWords words) {
        Optional<TraceUnit> unit = written(column, words);
        if (unit.isPresent()) {
            boolean hertzOfFan = unit.get().kind() == TraceUnit.Kind.CLOCK && words.hasAny(Vocabulary.FAN);
            return hertzOfFan ? Optional.empty() : Optional.of(unit.get().kind());
        }
        if (words.isForeign() || ForeignUnits.contains(column.unit(), true)) {
            return Optional.empty();
        }
        if (words.hasAny(Vocabulary.FAN) || words.hasAny(Vocabulary.ROTATION)) {
            return Optional.of(TraceUnit.Kind.ROTATION);
        }
        if (words.hasAny(Vocabulary.TEMPERATURE)) {
            return Optional.of(TraceUnit.Kind.TEMPERATURE);
        }
        if (words.hasAny(Vocabulary.POWER)) {
            return Optional.of(TraceUnit.Kind.POWER);
        }
        if (words.hasAny(Vocabulary.CLOCK)) {
            return Optional.of(TraceUnit.Kind.CLOCK);
        }
        if (words.hasAny(Vocabulary.ELECTRIC)) {
            return Optional.empty();
        }
        if (words.hasAny(Vocabulary.UTILISATION) || words.hasAny(Vocabulary.BATTERY) || words.hasAny(Vocabulary.FULLNESS)) {
            return Optional.of(TraceUnit.Kind.SHARE);
        }
        Optional<TraceUnit.Kind> symbol = words.kindOfSymbol();
        if (symbol.isPresent()) {
            return symbol;
        }
        if (words.hasAny("die", "core*", "junction") || words.hasAny(Vocabulary.AMBIENT) || words.hasAny(Vocabulary.SURFACE) || words.hasAny(Vocabulary.BOARD)) {
            return Optional.of(TraceUnit.Kind.TEMPERATURE);
        }
        return bySymbol(words);
    }

    private static Optional<TraceUnit.Kind> bySymbol(HeadingWords words) {
        if (words.isSymbol("t", "ta", "tb", "tc", "td", "tj", "ts", "tamb", "tair")) {
            return Optional.of(TraceUnit.Kind.TEMPERATURE);
        }
        if (words.isSymbol("p", "pkg")) {
            return Optional.of(TraceUnit.Kind.POWER);
        }
        if (words.isSymbol("f")) {
            return Optional.of(TraceUnit.Kind.CLOCK);
        }
        if (words.isSymbol("n")) {
            return Optional.of(TraceUnit.Kind.ROTATION);
        }
        return words.isSymbol("u", "q") ? Optional.of(TraceUnit.Kind.SHARE) : Optional.empty();
    }

    /** Unit of the column for what it measures: as written, else by the size of the numbers. */
    static TraceUnit of(ColumnSample column, TraceUnit.Kind kind) {
        Optional<TraceUnit> written = written(column, new HeadingWords(column.name())).filter(unit -> unit.kind() == kind);
        boolean certain = written.isPresent() && !(written.get() == TraceUnit.PERCENT && column.unit().isEmpty());
        double high = certain ? Double.NaN : high(column.values()); // sorts: not without need
        if (written.isPresent() && !(high <= 1.0 && high > 0)) {
            return written.get();
        }
        return switch (kind) {
            case TIME -> TraceUnit.SECOND;
            case TEMPERATURE -> high > 2000 ? TraceUnit.MILLICELSIUS : high > 230 ? TraceUnit.KELVIN : high > 125 ? TraceUnit.FAHRENHEIT : TraceUnit.CELSIUS;
            case POWER -> high > 1e6 ? TraceUnit.MICROWATT : high > 2000 ? TraceUnit.MILLIWATT : TraceUnit.WATT;
            case CLOCK -> high > 2e8 ? TraceUnit.HERTZ : high > 2e5 ? TraceUnit.KILOHERTZ : high > 20 ? TraceUnit.MEGAHERTZ : TraceUnit.GIGAHERTZ;
            case ROTATION -> TraceUnit.RPM;
            case SHARE -> high <= 1.0 && high > 0 ? TraceUnit.FRACTION : TraceUnit.PERCENT;
        };
    }

    /** Whether heading or line of units say a unit of this kind. */
    static boolean isWritten(ColumnSample column, TraceUnit.Kind kind) {
        return written(column, new HeadingWords(column.name())).filter(unit -> unit.kind() == kind).isPresent();
    }

    /** Unit of a column of time; stamps are read in s. */
    static TraceUnit ofTime(ColumnSample column) {
        if (column.kind() != ColumnSample.CellKind.NUMBER) {
            return TraceUnit.SECOND;
        }
        Optional<TraceUnit> written = written(column, new HeadingWords(column.name())).filter(unit -> unit.kind() == TraceUnit.Kind.TIME);
        double[] values = Arrays.stream(column.values()).filter(value -> !Double.isNaN(value)).toArray();
        double first = values.length == 0 ? 0 : values[0];
        if (first > 1e17) {
            return TraceUnit.NANOSECOND;
        }
        if (first > 1e14) {
            return TraceUnit.MICROSECOND;
        }
        if (first > 1e11) {
            return TraceUnit.MILLISECOND;
        }
        double step = step(values);
        if (written.isPresent()) {
            return written.get();
        }
        if (first > 20_000 && first < 80_000 && step > 0 && step < 0.01) {
            return TraceUnit.DAY; // a spreadsheet's serial date
        }
        return step >= 50_000 ? TraceUnit.MICROSECOND : step >= 100 ? TraceUnit.MILLISECOND : TraceUnit.SECOND;
    }

    private static double step(double[] values) {
        double[] steps = new double[Math.max(0, values.length - 1)];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = values[i + 1] - values[i];
        }
        Arrays.sort(steps);
        return steps.length == 0 ? 0 : steps[steps.length / 2];
    }

    private static Optional<TraceUnit> written(ColumnSample column, HeadingWords words) {
        return TraceUnit.named(column.unit()).or(words::unit);
    }

    /** The value that all but the highest hundredth stay below: a sentinel or a spike does not decide. */
    private static double high(double[] values) {
        double[] sorted = Arrays.stream(values).filter(value -> !Double.isNaN(value)).sorted().toArray();
        return sorted.length == 0 ? 0 : sorted[(int) Math.min(sorted.length - 1, Math.round(0.99 * (sorted.length - 1)))];
    }
}
