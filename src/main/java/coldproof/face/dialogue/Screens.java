package coldproof.face.dialogue;

import coldproof.job.LogJob;

/** Talks that use the whole screen and single keys; there are none without a terminal that can do it. */
public interface Screens {
    /** Leads through the checklist until the person leaves it or all is done. */
    void log(LogJob log);
}
