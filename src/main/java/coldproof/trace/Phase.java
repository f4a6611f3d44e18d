package coldproof.trace;

import coldproof.quantity.ConstantWord;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/**
 * A stretch of the work of one kind.
 *
 * @param kind what the device does in it
 * @param fromSeconds from the start of the work
 * @param toSeconds from the start of the work
 * @param means mean of each measured channel, in the units used inside
 */
public record Phase(Kind kind, double fromSeconds, double toSeconds, Map<Channel, Double> means) {
    /** Copies its map. */
    public Phase {
        Map<Channel, Double> copy = new EnumMap<>(Channel.class);
        copy.putAll(means);
        means = Collections.unmodifiableMap(copy);
    }

    /** What a phase is. */
    public enum Kind {
        /** Draws more than it can sustain. */
        BOOST,
        /** On its way to the sustained level. */
        SETTLING,
        /** At the level it holds. */
        SUSTAINED;

        /** As people call it. */
        public String label() {
            return ConstantWord.of(this);
        }
    }
}
