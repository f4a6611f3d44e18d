package coldproof.reason.checklist;

import coldproof.plan.Position;
import java.util.Optional;

/**
 * What is to be done next.
 *
 * @param kind which of the closed set
 * @param session the session it is about, first is 1; 0 when the study is finished
 * @param position the trial it is about; empty for the end of a session and of the study
 */
public record Step(Kind kind, int session, Optional<Position> position) {
    /** The steps there are. */
    public enum Kind {
        /** The person had stopped: go on. */
        RESUME,
        /** Set the hard-to-change factors, begin a session. */
        OPEN_SESSION,
        /** Wait until the device has settled. */
        SOAK,
        /** Read the start conditions of a trial. */
        START_CONDITIONS,
        /** Run the workload, note its score. */
        RUN_TRIAL,
        /** Every trial of the session is settled: end it. */
        CLOSE_SESSION,
        /** Nothing is left to do. */
        FINISHED
    }

    static Step of(Kind kind, Position position) {
        return new Step(kind, position.session(), Optional.of(position));
    }
}
