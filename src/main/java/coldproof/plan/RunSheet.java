package coldproof.plan;

import java.util.List;
import java.util.Optional;

/**
 * Every trial in the order to run it, and the orders it was drawn from.
 *
 * @param positions the trials, numbered from 1
 * @param sessionOrders the set the order of sessions was drawn from, where whole sessions were ordered
 */
public record RunSheet(List<Position> positions, Optional<Sequences> sessionOrders) {
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
