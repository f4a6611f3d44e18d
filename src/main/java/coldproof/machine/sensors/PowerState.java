package coldproof.machine.sensors;

import java.util.Optional;

/** Where the power comes from. Only reads; from any thread. */
interface PowerState {
    /** Whether a battery is being charged; empty where nothing says so. */
    Optional<Boolean> charging();

    /** Whether the device runs from something else than its battery; empty where nothing says so. */
    Optional<Boolean> plugged();

    /** Nothing says anything. */
    PowerState UNKNOWN = new PowerState() {
        @Override
        public Optional<Boolean> charging() {
            return Optional.empty();
        }

        @Override
        public Optional<Boolean> plugged() {
            return Optional.empty();
        }
    };
}
