package coldproof.study;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One trial and its score.
 *
 * @param position place in the run sheet, first is 1
 * @param session number of the session, first is 1
 * @param orderInSession place within the session, first is 1
 * @param levels level of every factor, by factor, in the order of the plan
 * @param score the metric, finite
 * @param unit unit of the score as the plan writes it, may be empty
 * @param loops results of the loops of a looped workload in their order, empty when there are none; never replicates
 * @param trace telemetry of this trial, as a path relative to the study folder
 * @param startedAt when the workload started, by the wall clock
 * @param elapsedSeconds how long it ran by the monotonic clock, s, 0 or more
 * @param source where the score came from
 */
public record TrialRecorded(int position, int session, int orderInSession, Map<String, String> levels, double score, String unit,
        List<Double> loops, Optional<String> trace, OffsetDateTime startedAt, double elapsedSeconds, Source source) implements Event {
    /** Refuses numbers below 1, a score that is not finite and a trace path that leaves the folder. */
    public TrialRecorded {
        Values.atLeast("position", position, 1);
        Values.atLeast("session", session, 1);
        Values.atLeast("orderInSession", orderInSession, 1);
        levels = Values.levels(levels);
        Values.finite("score", score);
        Values.text("unit", unit);
        loops = Values.finite("loops", loops);
        trace.ifPresent(path -> Values.insideFolder("trace", path));
        Values.present("startedAt", startedAt);
        Values.notNegative("elapsedSeconds", elapsedSeconds);
        Values.present("source", source);
    }

    @Override
    public EventKind kind() {
        return EventKind.TRIAL_RECORDED;
    }
}
