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
    private static final double MIXED = 0.1; // of an interval that may be rest; time stamps jitter

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

    /**
     * First entry whose middle lies at the time given from the start of the work or later; the last entry of the work where none does. Halves
     * the stretch, since times rise: a log of a day asks for tens of thousands of times.
     */
    int entryAt(Series series, double secondsFromStart) {
        int at = from;
        int last = to - 1;
        while (at < last) {
            int middle = (at + last) >>> 1;
            if (middleSeconds(series, middle) < secondsFromStart) {
                at = middle + 1;
            } else {
                last = middle;
            }
        }
        return at;
    }

    /** Time of an entry from the start of the work: the middle of the interval it is the mean of. */
    double middleSeconds(Series series, int entry) {
        return series.seconds(entry) - series.samplingSeconds() / 2 - startSeconds;
    }

    /** Whether the log shows rest before the work; else it began earlier than the log, or with it. */
    public boolean beginIsSeen() {
        return from > 0;
    }

    /** Whether a row is work only: power and clock are means over the interval before the row, which may reach into the rest beside the work. */
    boolean holds(double rowSeconds, double samplingSeconds) {
        double slack = MIXED * samplingSeconds;
        return rowSeconds - samplingSeconds > startSeconds - slack && rowSeconds < endSeconds + slack;
    }
}
