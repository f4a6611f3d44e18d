package coldproof.reason.checklist;

/** What the person is asked for. */
public enum Ask {
    /** Whether to go on where work was broken off, and whether to soak again. */
    RESUME,
    /** To set the hard-to-change factors and begin the session. */
    OPEN_SESSION,
    /** The air temperature of the session. */
    AIR,
    /** The relative humidity of that air. */
    HUMIDITY,
    /** The wind of a session outdoors. */
    WIND,
    /** What falls from the sky. */
    PRECIPITATION,
    /** The temperature of a device that came in from outdoors. */
    DEVICE,
    /** To see to what the safety rules say, and to sign for it, or to measure again. */
    SAFETY,
    /** To wait, and to say when the device has settled. */
    SOAK,
    /** The die temperature before a trial. */
    DIE,
    /** The battery's charge before a trial. */
    BATTERY,
    /** The power source before a trial. */
    POWER,
    /** The score of a trial. */
    SCORE,
    /** A second look at a score that is far from the others. */
    CONFIRM_SCORE,
    /** Why a trial is left out. */
    SKIP_REASON,
    /** Why the session is broken off. */
    ABORT_REASON,
    /** The text of a note. */
    NOTE,
    /** To end the session. */
    CLOSE_SESSION,
    /** Nothing: all is done. */
    FINISHED
}
