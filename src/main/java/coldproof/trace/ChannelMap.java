package coldproof.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Which column of a log is which channel.
 *
 * @param time the column of the time
 * @param columns the other columns that are used, in the order of the file
 */
public record ChannelMap(MappedColumn time, List<MappedColumn> columns) {
    /** Refuses a time column that is none; copies its list. */
    public ChannelMap {
        if (time.channel() != Channel.TIME) {
            throw new IllegalArgumentException("the time column holds " + time.channel().label());
        }
        columns = List.copyOf(columns);
    }

    /** How a column was recognised. */
    public enum Origin {
        /** The person said so. */
        SET("set"),
        /** By the words in its heading. */
        NAME("by its name"),
        /** By its unit, or how its numbers behave. */
        VALUES("by its values");

        private final String label;

        Origin(String label) {
            this.label = label;
        }

        /** For a table. */
        public String label() {
            return label;
        }
    }

    /**
     * A column that is used.
     *
     * @param index which column of the file, first is 0
     * @param name heading as written
     * @param channel what it measures
     * @param unit in which it is written
     * @param kind what its cells hold
     * @param origin how it was recognised
     */
    public record MappedColumn(int index, String name, Channel channel, TraceUnit unit, ColumnSample.CellKind kind, Origin origin) {}

    /** Columns of the file in the order in which rows are taken: the time first. */
    public int[] wanted() {
        int[] wanted = new int[columns.size() + 1];
        wanted[0] = time.index();
        for (int i = 0; i < columns.size(); i++) {
            wanted[i + 1] = columns.get(i).index();
        }
        return wanted;
    }

    /** Time and all other columns. */
    public List<MappedColumn> all() {
        List<MappedColumn> all = new ArrayList<>();
        all.add(time);
        all.addAll(columns);
        return all;
    }

    /** The first column of a channel. */
    public Optional<MappedColumn> first(Channel channel) {
        return all().stream().filter(column -> column.channel() == channel).findFirst();
    }
}
