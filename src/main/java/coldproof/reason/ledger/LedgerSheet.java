package coldproof.reason.ledger;

import java.util.List;

/**
 * What a ledger is made from.
 *
 * @param title one line
 * @param reference name of the device the others are compared with
 * @param level confidence level of the intervals, in (0, 1)
 * @param currency word of the prices, empty when there is none
 * @param simulated whether the figures are invented
 * @param workloads the workloads, one or more
 * @param devices the devices, one or more, the reference among them
 */
public record LedgerSheet(String title, String reference, double level, String currency, boolean simulated, List<LedgerWorkload> workloads,
        List<LedgerDevice> devices) {
    /** Copies; refuses a reference that is not there. */
    public LedgerSheet {
        workloads = List.copyOf(workloads);
        devices = List.copyOf(devices);
        if (devices.stream().noneMatch(device -> device.name().equals(reference))) {
            throw new IllegalArgumentException("no device is called " + reference);
        }
    }

    /** The device the others are compared with. */
    public LedgerDevice referenceDevice() {
        return devices.stream().filter(device -> device.name().equals(reference)).findFirst().orElseThrow();
    }
}
