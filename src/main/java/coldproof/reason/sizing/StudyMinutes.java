package coldproof.reason.sizing;

import java.util.OptionalDouble;

/**
 * Time a study takes, min.
 *
 * @param total of all sessions; empty where the plan gives no time for a trial
 * @param outdoors of the sessions outdoors, set-up and soak included
 */
public record StudyMinutes(OptionalDouble total, OptionalDouble outdoors) {
    /** Where no times are given. */
    public static final StudyMinutes UNKNOWN = new StudyMinutes(OptionalDouble.empty(), OptionalDouble.empty());
}
