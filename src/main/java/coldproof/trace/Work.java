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
}
