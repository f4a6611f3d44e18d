package coldproof.study;

/**
 * Something in the journal that a careful reader should know, though nothing is lost by it.
 *
 * @param kind which of the closed set
 * @param sequence the entry at which it shows
 * @param text one sentence for people
 */
public record Oddity(Kind kind, long sequence, String text) {
    /** What can be odd. */
    public enum Kind {
        /** The wall clock went back. */
        CLOCK_SET_BACK,
        /** The wall clock ran ahead of the monotonic one: it was set forward, or the computer slept. */
        CLOCK_RAN_AHEAD,
        /** The offset from UTC changed: daylight saving, or a computer with another zone. */
        ZONE_CHANGED,
        /** The monotonic clock of one process went back, which no computer does by itself. */
        MONOTONIC_WENT_BACK,
        /** The sequence numbers have a gap: entries are missing. */
        ENTRIES_MISSING,
        /** A position of the run sheet has a second trial or a skip beside its trial; the first stands. */
        POSITION_TAKEN,
        /** An undo, a correction or a note points at an entry that it cannot apply to. */
        WRONG_TARGET,
        /** A session was opened or used out of turn. */
        SESSION_OUT_OF_TURN,
        /** The plan was frozen a second time. */
        PLAN_FROZEN_AGAIN,
        /** An entry of a kind this version does not know. */
        UNKNOWN_KIND,
        /** The journal file was damaged and mended, or two copies were merged. */
        MENDED
    }
}
