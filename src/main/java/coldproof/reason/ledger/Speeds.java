package coldproof.reason.ledger;

import coldproof.plan.Better;
import coldproof.stats.propagation.Combination;
import coldproof.stats.propagation.Quantity;
import java.util.List;
import java.util.Optional;

/** Logarithms of speeds of a device: of one workload, over several, per watt, per unit of money. */
final class Speeds {
    private Speeds() {}

    /**
     * Logarithm of a speed with the quantities it rests on.
     *
     * @param log the logarithm
     * @param stated whether every source says how sure its value is
     */
    record Speed(Combination log, boolean stated) {
        Speed minus(Speed other) {
            return new Speed(log.plus(-1, other.log), stated && other.stated);
        }
    }

    /** Empty where the device lacks a figure, a power or a price that it takes. */
    static Optional<Speed> of(LedgerDevice device, List<LedgerWorkload> workloads, LedgerTable.Kind kind) {
        Optional<Speed> sum = Optional.empty();
        for (LedgerWorkload workload : workloads) {
            LedgerFigure figure = device.figures().get(workload.name());
            if (figure == null) {
                return Optional.empty();
            }
            double sign = workload.better() == Better.HIGHER ? 1 : -1;
            Combination log = Combination.of(figure.log(device.name() + "\n" + workload.name())).times(sign / workloads.size());
            sum = Optional.of(sum.isEmpty() ? new Speed(log, figure.isStated())
                    : new Speed(sum.get().log.plus(1, log), sum.get().stated && figure.isStated()));
        }
        return sum.flatMap(speed -> per(device, speed, kind));
    }

    private static Optional<Speed> per(LedgerDevice device, Speed speed, LedgerTable.Kind kind) {
        return switch (kind) {
            case SPEED -> Optional.of(speed);
            case PER_WATT -> device.power().map(power -> new Speed(speed.log.plus(-1, Combination.of(power.log(device.name() + "\npower"))),
                    speed.stated && power.isStated()));
            case PER_MONEY -> device.price().isEmpty() ? Optional.empty()
                    : Optional.of(new Speed(speed.log.plus(-1, Combination.of(new Quantity(device.name() + "\nprice", Math.log(device.price().getAsDouble()), 0,
                            Double.POSITIVE_INFINITY))), speed.stated));
        };
    }
}
