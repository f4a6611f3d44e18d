package coldproof.trace;

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
        means = java.util.Collections.unmodifiableMap(copy);
    }

    /** What a phase is. */
    public enum Kind {
        /** Draws more than it can sustain. */
        BOOST("boost"),
        /** On its way to the sustained level. */
        SETTLING("settling"),
        /** At the level it holds. */
        SUSTAINED("sustained");

        private final String label;

        Kind(String label) {
            this.label = label;
        }

        /** As people call it. */
        public String label() {
            return label;
        }
    }
}
