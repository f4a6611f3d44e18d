package coldproof.trace;

import coldproof.trace.ChannelMap.MappedColumn;
import coldproof.trace.ChannelMap.Origin;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Tells temperatures apart. Words decide where there are any; else the die is what heats up at once and most when the work begins, the
 * air is what does not care, and what follows slowly is the board or the outside.
 */
final class TemperatureGuess {
    private static final double CARES = 4; // K of rise below which a sensor is taken for air
    private static final double AT_ONCE = 0.35; // share of the quickest sensor's rise in the first rows that makes a die sensor

    private final SampleShape shape;
    private final List<ColumnSample> samples = new ArrayList<>(); // named
    private final List<Channel> channels = new ArrayList<>(); // of the named, in the same order
    private final List<ColumnSample> unnamed = new ArrayList<>();

    TemperatureGuess(SampleShape shape) {
        this.shape = shape;
    }

    void add(ColumnSample column, HeadingWords words) {
        if (words.hasAny(Vocabulary.BESIDE) || words.hasAny(Vocabulary.EXHAUST)) {
            return;
        }
        Optional<Channel> channel = byWords(words);
        if (channel.isEmpty()) {
            unnamed.add(column);
        } else {
            channels.add(channel.get());
            samples.add(column);
        }
    }

    private static Optional<Channel> byWords(HeadingWords words) {
        if (words.hasAny(Vocabulary.BATTERY) || words.hasAny(Vocabulary.CELL)) {
            return Optional.of(Channel.BATTERY_TEMPERATURE);
        }
        if (words.hasAny(Vocabulary.SURFACE) || words.isSymbol("ts", "tc")) {
            return Optional.of(Channel.SURFACE_TEMPERATURE);
        }
        if (words.hasAny(Vocabulary.BOARD) || words.isSymbol("tb")) {
            return Optional.of(Channel.BOARD_TEMPERATURE);
        }
        if (words.hasAny(Vocabulary.AMBIENT) || words.hasAny("amb") || words.isSymbol("ta", "tamb", "tair", "tenv", "tu")) {
            return Optional.of(Channel.AMBIENT);
        }
        if (words.hasAny(Vocabulary.PROCESSOR) || words.isSymbol("tj", "td")) {
            return Optional.of(Channel.DIE_TEMPERATURE);
        }
        return words.hasAny(Vocabulary.SYSTEM) ? Optional.of(Channel.BOARD_TEMPERATURE) : Optional.empty();
    }

    List<MappedColumn> decide() {
        List<MappedColumn> decided = new ArrayList<>();
        for (int i = 0; i < samples.size(); i++) {
            decided.add(ChannelGuess.mapped(samples.get(i), channels.get(i), unit(samples.get(i)), Origin.NAME));
        }
        boolean airKnown = has(Channel.AMBIENT);
        double quickest = unnamed.stream().mapToDouble(column -> inside(column, shape.quickRise(column))).max().orElse(0);
        boolean dieKnown = samples.stream().anyMatch(column -> isDie(column, quickest));
        double hottest = unnamed.stream().mapToDouble(column -> level(column, shape.work(column))).max().orElse(0);
        ColumnSample coldest = null;
        for (ColumnSample column : unnamed) {
            coldest = coldest == null || level(column, shape.work(column)) < level(coldest, shape.work(coldest)) ? column : coldest;
        }
        List<ColumnSample> slow = new ArrayList<>();
        for (ColumnSample column : unnamed) {
            boolean quick = shape.hasStart() ? quickest > CARES && inside(column, shape.quickRise(column)) >= AT_ONCE * quickest
                    : level(column, shape.work(column)) > hottest - 15;
            boolean cares = inside(column, shape.rise(column)) > CARES;
            if (quick && !dieKnown) {
                decided.add(mapped(column, Channel.DIE_TEMPERATURE));
            } else if (!cares && !airKnown && column == coldest && unnamed.size() > 1) {
                decided.add(mapped(column, Channel.AMBIENT));
            } else {
                slow.add(column);
            }
        }
        slow.sort((a, b) -> Double.compare(level(b, shape.work(b)), level(a, shape.work(a))));
        for (ColumnSample column : slow) {
            boolean board = !has(Channel.BOARD_TEMPERATURE) && column == slow.get(0);
            decided.add(mapped(column, board ? Channel.BOARD_TEMPERATURE : Channel.SURFACE_TEMPERATURE));
        }
        return decided;
    }

    /** Whether a named column is a sensor on a die that works: it rises at least as quickly as what nobody named. */
    private boolean isDie(ColumnSample column, double quickest) {
        boolean called = channels.get(samples.indexOf(column)) == Channel.DIE_TEMPERATURE;
        return called && (!shape.hasStart() || quickest <= CARES || inside(column, shape.quickRise(column)) >= AT_ONCE * quickest);
    }

    private MappedColumn mapped(ColumnSample column, Channel channel) {
        return ChannelGuess.mapped(column, channel, unit(column), Origin.VALUES);
    }

    /** Its own unit where one is written; else that of the hottest column without one, since a program writes all alike. */
    private TraceUnit unit(ColumnSample column) {
        return UnitGuess.isWritten(column, TraceUnit.Kind.TEMPERATURE) ? UnitGuess.of(column, TraceUnit.Kind.TEMPERATURE) : hottest().orElse(TraceUnit.CELSIUS);
    }

    private Optional<TraceUnit> hottest() {
        return Stream.concat(samples.stream(), unnamed.stream()).filter(column -> !UnitGuess.isWritten(column, TraceUnit.Kind.TEMPERATURE))
                .map(column -> UnitGuess.of(column, TraceUnit.Kind.TEMPERATURE)).max(Comparator.comparingInt(TemperatureGuess::certainty));
    }

    /** Larger numbers tell a unit, small ones may be in any. */
    private static int certainty(TraceUnit unit) {
        return List.of(TraceUnit.CELSIUS, TraceUnit.FAHRENHEIT, TraceUnit.KELVIN, TraceUnit.MILLICELSIUS).indexOf(unit);
    }

    private boolean has(Channel channel) {
        return channels.contains(channel);
    }

    private double level(ColumnSample column, double value) {
        return unit(column).toInside(value);
    }

    /** A difference in K. */
    private double inside(ColumnSample column, double difference) {
        TraceUnit unit = unit(column);
        return unit.toInside(difference) - unit.toInside(0);
    }
}
