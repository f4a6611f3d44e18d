package coldproof.trace;

import coldproof.trace.ChannelMap.MappedColumn;
import coldproof.trace.ChannelMap.Origin;
import coldproof.trace.ColumnSample.CellKind;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Tells which column of a log is which channel: first by the words of its heading, then by its unit, then by how its numbers behave when
 * the work begins. What a person sets is never overruled.
 */
public final class ChannelGuess {
    /**
     * What a person set.
     *
     * @param column which column, first is 0
     * @param channel what it measures
     * @param unit its unit, empty when the heading or the values shall tell
     */
    public record Setting(int column, Channel channel, Optional<TraceUnit> unit) {}

    private static final double MOST_PERCENT = 101;
    private static final double CONSTANT_SHARE = 0.4; // of the difference of two powers in the work that is there at rest too

    private final List<ColumnSample> columns;
    private final List<Setting> settings;
    private final List<MappedColumn> found = new ArrayList<>();
    private final SampleShape shape;

    private ChannelGuess(List<ColumnSample> columns, List<Setting> settings) {
        this.columns = columns;
        this.settings = settings;
        List<ColumnSample> numbers = columns.stream().filter(column -> column.kind() == CellKind.NUMBER).toList();
        shape = new SampleShape(numbers);
    }

    /**
     * The best guess.
     *
     * @param columns the columns with their first rows
     * @param settings what the person set; a channel that is set is not looked for in other columns
     * @return the map, or empty when there is no column of time
     */
    public static Optional<ChannelMap> of(List<ColumnSample> columns, List<Setting> settings) {
        return new ChannelGuess(columns, settings).map();
    }

    private Optional<ChannelMap> map() {
        Optional<MappedColumn> time = time();
        if (time.isEmpty()) {
            return Optional.empty();
        }
        for (Setting setting : settings) {
            if (setting.channel() != Channel.TIME) {
                ColumnSample column = columns.get(setting.column());
                TraceUnit unit = setting.unit().orElseGet(() -> UnitGuess.of(column, setting.channel().kind()));
                found.add(mapped(column, setting.channel(), unit, Origin.SET));
            }
        }
        List<ColumnSample> rest = columns.stream().filter(column -> column.kind() == CellKind.NUMBER && column.index() != time.get().index()
                && settings.stream().noneMatch(setting -> setting.column() == column.index())).toList();
        TemperatureGuess temperatures = new TemperatureGuess(shape);
        List<ColumnSample> otherParts = IdleProcessor.columns(rest, shape);
        for (ColumnSample column : rest) {
            HeadingWords words = new HeadingWords(column.name());
            if (!words.hasAny(Vocabulary.NOT_MEASURED) && !otherParts.contains(column) && !isStatistic(words, rest)) {
                UnitGuess.kindOf(column, words).ifPresent(measured -> sort(column, words, measured, temperatures));
            }
        }
        temperatures.decide().forEach(this::add);
        chooseAmongSeveral();
        found.sort(Comparator.comparingInt(MappedColumn::index));
        return Optional.of(new ChannelMap(time.get(), found));
    }

    private void sort(ColumnSample column, HeadingWords words, TraceUnit.Kind kind, TemperatureGuess temperatures) {
        switch (kind) {
            case TEMPERATURE -> temperatures.add(column, words);
            case POWER -> power(column, words);
            case CLOCK -> clock(column, words);
            case ROTATION -> fan(column, words);
            case SHARE -> share(column, words);
            case TIME -> {
                // A second column of time, such as the time left on battery, is of no use here.
            }
        }
    }

    /** Whether it is a lowest, highest or mean reading beside the reading itself. */
    private static boolean isStatistic(HeadingWords words, List<ColumnSample> columns) {
        List<String> bare = words.wordsBut(Vocabulary.STATISTIC);
        return words.hasAny(Vocabulary.STATISTIC) && columns.stream().map(column -> new HeadingWords(column.name()))
                .anyMatch(other -> !other.hasAny(Vocabulary.STATISTIC) && other.wordsBut().equals(bare) && other.unit().equals(words.unit()));
    }

    private void power(ColumnSample column, HeadingWords words) {
        boolean other = words.hasAny(Vocabulary.BATTERY) || words.hasAny(Vocabulary.CELL) || words.hasAny(Vocabulary.NOT_THE_WHOLE) || words.hasAny(Vocabulary.BESIDE);
        boolean whole = words.hasAny(Vocabulary.WHOLE_DEVICE);
        boolean part = words.hasAny(Vocabulary.PROCESSOR);
        boolean setting = !whole && !part && shape.hasStart() && isStill(column);
        if (!other && !setting) {
            TraceUnit unit = UnitGuess.of(column, TraceUnit.Kind.POWER);
            boolean wholeCard = words.hasAny("board") && words.hasAny(Vocabulary.WHOLE_DEVICE) && !words.hasAny("package", "pkg", "chip", "core*");
            add(mapped(column, whole && (!part || wholeCard) ? Channel.SYSTEM_POWER : Channel.PACKAGE_POWER, unit, whole || part ? Origin.NAME : Origin.VALUES));
        }
    }

    /** Whether a column never changes: a setting. */
    private static boolean isStill(ColumnSample column) {
        double[] values = Arrays.stream(column.values()).filter(value -> !Double.isNaN(value)).toArray();
        return Arrays.stream(values).allMatch(value -> value == values[0]);
    }

    private void clock(ColumnSample column, HeadingWords words) {
        if (!words.hasAny(Vocabulary.BESIDE) && !words.hasAny(Vocabulary.OTHER_CLOCK)) {
            add(mapped(column, Channel.CLOCK, UnitGuess.of(column, TraceUnit.Kind.CLOCK), Origin.NAME));
        }
    }

    private void fan(ColumnSample column, HeadingWords words) {
        boolean told = words.unit().isPresent() || TraceUnit.named(column.unit()).isPresent();
        boolean share = words.hasAny(Vocabulary.DUTY) || !told && shape.top(column) <= MOST_PERCENT;
        if (!share && !words.hasAny(Vocabulary.BESIDE)) {
            add(mapped(column, Channel.FAN, UnitGuess.of(column, TraceUnit.Kind.ROTATION), Origin.NAME));
        }
    }

    private void share(ColumnSample column, HeadingWords words) {
        TraceUnit unit = UnitGuess.of(column, TraceUnit.Kind.SHARE);
        if (words.hasAny(Vocabulary.BESIDE) || words.hasAny(Vocabulary.FAN) || words.hasAny(Vocabulary.DUTY) || words.hasAny(Vocabulary.NOT_THE_WHOLE)
                || words.hasAny("rh", "residency")) {
            return;
        }
        boolean jumps = shape.hasStart() && shape.quickRise(column) > 0.3 * Math.abs(shape.top(column));
        boolean stateOfCharge = words.hasAny("state") && words.hasAny("charge");
        if (words.hasAny(Vocabulary.BATTERY) || stateOfCharge) {
            add(mapped(column, Channel.BATTERY_CHARGE, unit, Origin.NAME));
        } else if (words.hasAny(Vocabulary.UTILISATION)) {
            add(mapped(column, Channel.UTILISATION, unit, Origin.NAME));
        } else if (words.hasAny(Vocabulary.FULLNESS)) {
            boolean busy = jumps || words.hasAny(Vocabulary.MAIN_PROCESSOR) || words.hasAny(Vocabulary.GRAPHICS);
            add(mapped(column, busy ? Channel.UTILISATION : Channel.BATTERY_CHARGE, unit, Origin.NAME));
        } else if (words.hasAny(Vocabulary.PROCESSOR)) {
            add(mapped(column, Channel.UTILISATION, unit, Origin.NAME));
        } else {
            boolean busy = !shape.hasStart() && words.isSymbol("u");
            add(mapped(column, jumps || busy ? Channel.UTILISATION : Channel.BATTERY_CHARGE, unit, Origin.VALUES));
        }
    }

    private void add(MappedColumn column) {
        boolean set = settings.stream().anyMatch(setting -> setting.channel() == column.channel());
        if (!set) {
            found.add(column);
        }
    }

    /** Of several columns of one channel keeps those that mean the same thing. */
    private void chooseAmongSeveral() {
        splitPowers();
        keepBusiest(Channel.CLOCK, 0.9);
        keepBusiest(Channel.UTILISATION, 0.5);
        keepBusiest(Channel.FAN, 0.25);
        keepBusiest(Channel.BATTERY_CHARGE, 0);
        keepFirst(Channel.BATTERY_CHARGE);
        keepFirst(Channel.AMBIENT);
        keepFirst(Channel.SYSTEM_POWER);
    }

    /** Without words to tell, the larger power is the whole device's; of several parts the one that takes most is the package. */
    private void splitPowers() {
        List<MappedColumn> powers = guessed(Channel.PACKAGE_POWER);
        if (powers.size() < 2) {
            return;
        }
        powers.sort(Comparator.comparingDouble(power -> -work(power)));
        boolean systemKnown = found.stream().anyMatch(column -> column.channel() == Channel.SYSTEM_POWER);
        found.removeAll(powers);
        if (!systemKnown && powers.get(0).origin() == Origin.VALUES && holdsMore(powers.get(0), powers.get(1))) {
            found.add(as(Channel.SYSTEM_POWER, powers.remove(0)));
        }
        found.add(powers.get(0));
    }

    /** Whether the larger power holds consumers that do not care for the work, as a whole device does and a package does not. */
    private boolean holdsMore(MappedColumn larger, MappedColumn smaller) {
        double atRest = shape.before(columns.get(larger.index())) * larger.unit().toInside(1) - shape.before(columns.get(smaller.index())) * smaller.unit().toInside(1);
        return !shape.hasStart() || atRest > CONSTANT_SHARE * (work(larger) - work(smaller));
    }

    private void keepBusiest(Channel channel, double share) {
        List<MappedColumn> several = guessed(channel);
        double top = several.stream().mapToDouble(this::work).max().orElse(0);
        for (MappedColumn column : several) {
            if (work(column) < share * top) {
                found.remove(column);
            }
        }
    }

    private void keepFirst(Channel channel) {
        List<MappedColumn> several = guessed(channel);
        several.stream().skip(1).forEach(found::remove);
    }

    private double work(MappedColumn column) {
        return column.unit().toInside(shape.work(columns.get(column.index())));
    }

    private List<MappedColumn> guessed(Channel channel) {
        return new ArrayList<>(found.stream().filter(column -> column.channel() == channel && column.origin() != Origin.SET).toList());
    }

    private static MappedColumn as(Channel channel, MappedColumn column) {
        return new MappedColumn(column.index(), column.name(), channel, column.unit(), column.kind(), column.origin());
    }

    static MappedColumn mapped(ColumnSample column, Channel channel, TraceUnit unit, Origin origin) {
        return new MappedColumn(column.index(), column.name(), channel, unit, column.kind(), origin);
    }

    private Optional<MappedColumn> time() {
        for (Setting setting : settings) {
            if (setting.channel() == Channel.TIME) {
                ColumnSample column = columns.get(setting.column());
                return Optional.of(mapped(column, Channel.TIME, setting.unit().orElseGet(() -> UnitGuess.ofTime(column)), Origin.SET));
            }
        }
        ColumnSample best = null;
        int bestScore = 0;
        for (ColumnSample column : columns) {
            int score = timeScore(column);
            if (score > bestScore) {
                best = column;
                bestScore = score;
            }
        }
        return Optional.ofNullable(best).map(column -> mapped(column, Channel.TIME, UnitGuess.ofTime(column), Origin.NAME));
    }

    private static int timeScore(ColumnSample column) {
        boolean stamped = column.kind() == CellKind.DATE_TIME || column.kind() == CellKind.TIME_OF_DAY;
        if (column.kind() == CellKind.TEXT || !stamped && !rises(column.values())) {
            return 0;
        }
        HeadingWords words = new HeadingWords(column.name());
        boolean named = words.hasAny(Vocabulary.TIME) || words.isSymbol("t", "s");
        Optional<TraceUnit> written = words.unit().or(() -> TraceUnit.named(column.unit()));
        boolean unit = written.map(found -> found.kind() == TraceUnit.Kind.TIME).orElse(false);
        boolean counter = words.hasAny(Vocabulary.COUNTER);
        return 1 + (column.kind() == CellKind.DATE_TIME ? 7 : stamped ? 6 : 0) + (named ? 5 : 0) + (unit ? 4 : 0) + (isEven(column.values()) ? 3 : 0)
                - (written.isPresent() && !unit ? 4 : 0) - (counter && !named ? 1 : 0)
                + (column.index() == 0 ? 1 : 0);
    }

    /** Whether most steps are of about one size, as those of a clock are and those of a warming sensor are not. */
    private static boolean isEven(double[] values) {
        int even = 0;
        for (int i = 2; i < values.length; i++) {
            double step = values[i] - values[i - 1];
            double before = values[i - 1] - values[i - 2];
            even += step > 0.5 * before && before > 0.5 * step ? 1 : 0;
        }
        return 2 * even > values.length;
    }

    private static boolean rises(double[] values) {
        double last = Double.NEGATIVE_INFINITY;
        int count = 0;
        int falls = 0;
        for (double value : values) {
            if (!Double.isNaN(value)) {
                falls += value < last ? 1 : 0;
                last = value;
                count++;
            }
        }
        return count >= 2 && falls * 100 <= count && values[0] < last;
    }
}
