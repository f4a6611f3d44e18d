package coldproof.trace;

/** Takes the rows of a log as they are read. */
public interface RowSink {
    /**
     * One row.
     *
     * @param line line in the file, first is 1
     * @param values one number for each column asked for, as read, in the order asked for; NaN where the row has none. The array is used
     *     again for the next row: copy what must last
     */
    void row(long line, double[] values);

    /**
     * A cell that is neither a number nor a word for a missing value; its number is NaN in the row that follows.
     *
     * @param line line in the file, first is 1
     * @param column which of the columns asked for, first is 0
     * @param cell what was read
     */
    void unreadable(long line, int column, String cell);

    /**
     * A line that was left out, because it repeats the heading or has no readable time and no number.
     *
     * @param line line in the file, first is 1
     * @param why reads after "line 7 "
     */
    void skipped(long line, String why);
}
