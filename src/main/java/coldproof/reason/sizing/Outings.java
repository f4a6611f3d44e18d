package coldproof.reason.sizing;

import coldproof.reason.sizing.StudyLimits.Limit;

/** How the outdoor sessions of one level are packed into outings and days. */
final class Outings {
    private static final double WHOLE = 1e-9; // a session that fits a limit exactly fits
    private final int sessionsPerOuting;
    private final int outingsPerDay;

    Outings(double sessionSeconds, double sessionWattHours, double travelSeconds, StudyLimits limits) {
        int fitting = Math.min(limits.count(Limit.SESSIONS_PER_OUTING),
                Math.min(times(limits.of(Limit.OUTDOORS_PER_OUTING), sessionSeconds),
                        Math.min(times(limits.of(Limit.DAYLIGHT) - travelSeconds, sessionSeconds),
                                times(limits.of(Limit.BATTERY), sessionWattHours))));
        sessionsPerOuting = Math.max(0, fitting);
        double outingSeconds = travelSeconds + sessionsPerOuting * sessionSeconds;
        outingsPerDay = Math.min(limits.count(Limit.OUTINGS_PER_DAY), times(limits.of(Limit.DAYLIGHT), outingSeconds));
    }

    /** Whether a single session fits. */
    boolean possible() {
        return sessionsPerOuting >= 1 && outingsPerDay >= 1;
    }

    int count(int sessions) {
        return possible() ? (sessions + sessionsPerOuting - 1) / sessionsPerOuting : 0;
    }

    int days(int sessions) {
        return possible() ? (count(sessions) + outingsPerDay - 1) / outingsPerDay : 0;
    }

    private static int times(double limit, double each) {
        return each > 0 ? (int) Math.min(Integer.MAX_VALUE, Math.floor(limit / each + WHOLE)) : Integer.MAX_VALUE;
    }
}
