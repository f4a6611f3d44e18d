package coldproof.study;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/**
 * What was read before a trial or session began, and what was not as the plan wants it.
 *
 * @param session number of the session, first is 1
 * @param position the trial about to start; empty for a check of the whole session
 * @param readings what was read, by name such as {@code die temperature}, in the order taken
 * @param deviations one sentence for each condition that did not hold; empty when all held
 */
public record StartConditionsChecked(int session, OptionalInt position, Map<String, Observed> readings,
        List<String> deviations) implements Event {
    /** Refuses numbers below 1 and blank names. */
    public StartConditionsChecked {
        Values.atLeast("session", session, 1);
        position.ifPresent(trial -> Values.atLeast("position", trial, 1));
        readings = Values.ordered("readings", readings);
        deviations = List.copyOf(deviations);
    }

    @Override
    public EventKind kind() {
        return EventKind.START_CONDITIONS_CHECKED;
    }
}
