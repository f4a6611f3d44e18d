package coldproof.plan;

import java.util.List;

/**
 * Every trial in the order to run it.
 *
 * @param positions the trials, numbered from 1
 */
public record RunSheet(List<Position> positions) {
    /** Copies. */
    public RunSheet {
        positions = List.copyOf(positions);
    }

    /** How many sessions there are. */
    public int sessions() {
        int most = 0;
        for (Position position : positions) {
            most = Math.max(most, position.session());
        }
        return most;
    }

    /** The trials of one session, in order. */
    public List<Position> ofSession(int session) {
        return positions.stream().filter(position -> position.session() == session).toList();
    }
}
