package coldproof.trace;

import coldproof.trace.ChannelMap.MappedColumn;
import coldproof.trace.ChannelMap.Origin;
import java.util.ArrayList;
import java.util.List;

/**
 * Tells temperatures apart. Words decide where there are any; else the die is what heats up at once and most when the work begins, the
 * air is what does not care, and what follows slowly is the board or the outside.
 */
final class TemperatureGuess {
    private static final double CARES = 4; // K of rise below which a sensor is taken for air
    private static final double AT_ONCE = 0.35; // share of the quickest sensor's rise in the first rows that makes a die sensor

    private final SampleShape shape;
    private final List<MappedColumn> named = new ArrayList<>();
    private final List<ColumnSample> unnamed = new ArrayList<>();

    TemperatureGuess(SampleShape shape) {
        this.shape = shape;
    }

    void add(ColumnSample column, HeadingWords words) {
        Channel channel = null;
        if (words.hasAny("battery", "batterie", "akku", "cell", "bat")) {
            channel = Channel.BATTERY_TEMPERATURE;
        } else if (words.hasAny("skin", "surface", "case", "chassis", "lid", "palm", "keyboard", "shell", "housing", "gehäuse", "oberfläche")
                || words.isSymbol("ts", "tc")) {
            channel = Channel.SURFACE_TEMPERATURE;
        } else if (words.hasAny("board", "mainboard", "pcb", "vrm", "chipset", "platine") || words.isSymbol("tb")) {
            channel = Channel.BOARD_TEMPERATURE;
        } else if (words.hasAny("ambient", "air", "room", "inlet", "intake", "outdoor", "outside", "umgebung", "raum", "aussen", "außen", "luft")
                || words.isSymbol("ta", "tamb", "tair", "tenv", "tu")) {
            channel = Channel.AMBIENT;
        } else if (words.hasAny("die", "core", "cpu", "gpu", "soc", "chip", "junction", "package", "processor", "prozessor", "kern", "silicon")
                || words.isSymbol("tj", "td")) {
            channel = Channel.DIE_TEMPERATURE;
        }
        if (channel == null) {
            unnamed.add(column);
        } else {
            named.add(ChannelGuess.mapped(column, channel, UnitGuess.of(column, TraceUnit.Kind.TEMPERATURE), Origin.NAME));
        }
    }

    List<MappedColumn> decide() {
        List<MappedColumn> decided = new ArrayList<>(named);
        boolean dieKnown = has(Channel.DIE_TEMPERATURE);
        boolean airKnown = has(Channel.AMBIENT);
        double quickest = unnamed.stream().mapToDouble(column -> inside(column, shape.quickRise(column))).max().orElse(0);
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

    private static MappedColumn mapped(ColumnSample column, Channel channel) {
        return ChannelGuess.mapped(column, channel, UnitGuess.of(column, TraceUnit.Kind.TEMPERATURE), Origin.VALUES);
    }

    private boolean has(Channel channel) {
        return named.stream().anyMatch(column -> column.channel() == channel);
    }

    private static double level(ColumnSample column, double value) {
        return UnitGuess.of(column, TraceUnit.Kind.TEMPERATURE).toInside(value);
    }

    /** A difference in K. */
    private static double inside(ColumnSample column, double difference) {
        TraceUnit unit = UnitGuess.of(column, TraceUnit.Kind.TEMPERATURE);
        return unit.toInside(difference) - unit.toInside(0);
    }
}
