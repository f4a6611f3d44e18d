package coldproof.face.console;

import coldproof.face.dialogue.Lines;
import coldproof.job.LogJob;

/** How the shell talks with the person: by lines or with the whole screen. */
interface Talk extends Lines {
    /** Leads through the checklist. */
    void log(LogJob log);

    /** A verb is about to run on its own: the terminal is in its usual state until {@link #ask} is called again. */
    default void beforeVerb() {}
}
