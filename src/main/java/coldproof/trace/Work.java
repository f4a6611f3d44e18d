package coldproof.trace;

/**
 * When the device worked.
 *
 * @param from first entry of the series in the work
 * @param to first entry behind the work
 * @param startSeconds when it began, on the clock of the series
 * @param endSeconds when it ended, after the start
 * @param toldBy the channel whose jump showed the start, or {@link Channel#TIME} when nothing showed it and the whole log is taken for work
 */
public record Work(int from, int to, double startSeconds, double endSeconds, Channel toldBy) {
    /** Refuses an empty stretch. */
    public Work {
        if (!(from < to && startSeconds < endSeconds)) {
            throw new IllegalArgumentException("work from entry " + from + " to " + to + ", " + startSeconds + " s to " + endSeconds + " s is empty");
        }
    }

    /** Length in s, above 0. */
    public double lengthSeconds() {
        return endSeconds - startSeconds;
    }
}
