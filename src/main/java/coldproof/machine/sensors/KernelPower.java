package coldproof.machine.sensors;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Where the power comes from, by the folders of power_supply.
 *
 * @param batteries folders of the batteries
 * @param sources folders of everything else
 * @see "Linux kernel documentation: ABI/testing/sysfs-class-power"
 */
record KernelPower(List<Path> batteries, List<Path> sources) implements PowerState {
    private static final String CHARGING = "Charging";

    @Override
    public Optional<Boolean> charging() {
        List<String> status = status();
        return status.isEmpty() ? Optional.empty() : Optional.of(status.contains(CHARGING));
    }

    /** A source that is on line says yes. That none is says no only together with a battery that is being discharged. */
    @Override
    public Optional<Boolean> plugged() {
        List<String> status = status();
        boolean online = sources.stream().anyMatch(source -> KernelFile.number(source.resolve("online")).orElse(0) > 0);
        if (online || status.contains(CHARGING)) {
            return Optional.of(true);
        }
        return status.contains("Discharging") ? Optional.of(false) : Optional.empty();
    }

    private List<String> status() {
        return batteries.stream().map(battery -> KernelFile.text(battery.resolve("status"))).filter(text -> !text.isEmpty()).toList();
    }
}
