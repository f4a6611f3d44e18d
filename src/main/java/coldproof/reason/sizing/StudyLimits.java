package coldproof.reason.sizing;

import java.util.EnumMap;
import java.util.Map;

/**
 * What a study must not exceed. A limit that is not set does not bind; the counts always have one, so that a search ends.
 *
 * @param most the limits, in the units of {@link Limit}
 */
public record StudyLimits(Map<Limit, Double> most) {
    /** What can be limited. */
    public enum Limit {
        /** Seconds outdoors in one outing, travel left out. */
        OUTDOORS_PER_OUTING,
        /** Seconds outdoors in all, travel left out. */
        OUTDOORS_IN_ALL,
        /** Seconds of daylight in a day; outings with their travel must fit. */
        DAYLIGHT,
        /** Watt-hours of one charge; the sessions of an outing must fit. */
        BATTERY,
        /** Outdoor sessions held in one outing; 1 unless set. */
        SESSIONS_PER_OUTING,
        /** Outings in one day; 1 unless set. */
        OUTINGS_PER_DAY,
        /** Days with an outing. */
        DAYS,
        /** Seconds in all, travel included. */
        TIME_IN_ALL,
        /** Sessions of one level; 40 unless set. */
        SESSIONS_PER_LEVEL,
        /** Trials of one condition in one session; 20 unless set. */
        TRIALS_PER_CONDITION
    }

    /** Nothing limited beyond the counts. */
    public static final StudyLimits NONE = new StudyLimits(Map.of());
    private static final double USUAL_SESSIONS = 40; // more sittings than anybody has held for one question (common practice)
    private static final double USUAL_TRIALS = 20;
    private static final int LARGEST_COUNT = 200;

    /** Copies; refuses a limit that is not above 0, and counts beyond 200. */
    public StudyLimits {
        Map<Limit, Double> copy = new EnumMap<>(Limit.class);
        copy.putAll(most);
        copy.forEach((limit, value) -> {
            if (!(value > 0)) {
                throw new IllegalArgumentException("limit " + limit + " must be above 0, not " + value);
            }
        });
        for (Limit count : new Limit[] {Limit.SESSIONS_PER_LEVEL, Limit.TRIALS_PER_CONDITION}) {
            if (copy.getOrDefault(count, 1.0) > LARGEST_COUNT) {
                throw new IllegalArgumentException("limit " + count + " " + copy.get(count) + " is beyond " + LARGEST_COUNT);
            }
        }
        most = java.util.Collections.unmodifiableMap(copy);
    }

    /** The same with one limit set. */
    public StudyLimits with(Limit limit, double value) {
        Map<Limit, Double> copy = new EnumMap<>(Limit.class);
        copy.putAll(most);
        copy.put(limit, value);
        return new StudyLimits(copy);
    }

    /** The same with one limit lifted. */
    public StudyLimits without(Limit limit) {
        Map<Limit, Double> copy = new EnumMap<>(Limit.class);
        copy.putAll(most);
        copy.remove(limit);
        return new StudyLimits(copy);
    }

    /** The limit; infinite, or the usual count, where it is not set. */
    double of(Limit limit) {
        double unset = switch (limit) {
            case OUTDOORS_PER_OUTING, OUTDOORS_IN_ALL, DAYLIGHT, BATTERY, DAYS, TIME_IN_ALL -> Double.POSITIVE_INFINITY;
            case SESSIONS_PER_OUTING, OUTINGS_PER_DAY -> 1;
            case SESSIONS_PER_LEVEL -> USUAL_SESSIONS;
            case TRIALS_PER_CONDITION -> USUAL_TRIALS;
        };
        return most.getOrDefault(limit, unset);
    }

    /** A limit on a count, rounded down. */
    int count(Limit limit) {
        return (int) Math.min(LARGEST_COUNT, Math.floor(of(limit)));
    }
}
