package coldproof.machine.sensors;

/** Share of the time the processors were busy since it was asked last, from counters of time. */
final class LoadShare {
    /** Place of the idle time among the counters. */
    static final int IDLE = 3;
    /** Place of the time waiting for a drive, which counts as idle. */
    static final int WAITS = 4;

    private long lastBusy = -1;
    private long lastAll;

    /**
     * The share since the last call.
     *
     * @param busyAndAll time busy and time altogether, in any unit
     * @return %, in [0, 100]; NaN at the first call and when no time went by
     */
    double between(long[] busyAndAll) {
        long busy = busyAndAll[0];
        long all = busyAndAll[1];
        double share = lastBusy >= 0 && all > lastAll ? 100.0 * (busy - lastBusy) / (all - lastAll) : Double.NaN;
        lastBusy = busy;
        lastAll = all;
        return Math.min(100, Math.max(0, share)); // the time waiting for a drive may fall, says the kernel's documentation of /proc/stat
    }
}
