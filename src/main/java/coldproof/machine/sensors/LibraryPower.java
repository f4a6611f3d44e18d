package coldproof.machine.sensors;

import java.util.List;
import java.util.Optional;

/** Where the power comes from, by the library. A call that throws says nothing. */
record LibraryPower(SystemLibrary library) implements PowerState {
    @Override
    public Optional<Boolean> charging() {
        List<SystemLibrary.Battery> batteries = batteries();
        return batteries.isEmpty() ? Optional.empty() : Optional.of(batteries.stream().anyMatch(SystemLibrary.Battery::charging));
    }

    @Override
    public Optional<Boolean> plugged() {
        List<SystemLibrary.Battery> batteries = batteries();
        if (batteries.stream().anyMatch(battery -> battery.plugged() || battery.charging())) {
            return Optional.of(true);
        }
        return batteries.stream().anyMatch(SystemLibrary.Battery::discharging) ? Optional.of(false) : Optional.empty();
    }

    private List<SystemLibrary.Battery> batteries() {
        try {
            return library.batteries().stream().filter(LibrarySensors::isThere).toList();
        } catch (RuntimeException | LinkageError silent) {
            return List.of(); // told by the battery's sensors, which ask the same
        }
    }
}
