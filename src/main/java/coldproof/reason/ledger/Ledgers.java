package coldproof.reason.ledger;

import coldproof.plan.Better;
import coldproof.reason.ledger.LedgerTable.Kind;
import coldproof.stats.interval.ConfidenceInterval;
import coldproof.stats.interval.Fieller;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Compares the devices of a ledger. All comparisons are of logarithms of speeds, so that "25 % faster" one way is the same finding as "20 %
 * slower" the other, and several workloads are averaged by the geometric mean of their ratios (P. J. Fleming, J. J. Wallace, Communications
 * of the ACM 29 (1986) 218-221).
 */
public final class Ledgers {
    private static final double LARGE_PERCENT = 20; // beyond, a symmetric error of the value is no longer one of its logarithm

    private Ledgers() {}

    /** Sets the devices side by side. */
    public static Ledger compare(LedgerSheet sheet) {
        List<LedgerTable> tables = new ArrayList<>();
        for (Kind kind : Kind.values()) {
            for (LedgerWorkload workload : sheet.workloads()) {
                table(sheet, kind, List.of(workload)).ifPresent(tables::add);
            }
            if (sheet.workloads().size() > 1) {
                table(sheet, kind, sheet.workloads()).ifPresent(tables::add);
            }
        }
        return new Ledger(sheet, tables, Restraints.of(sheet), warnings(sheet));
    }

    /** Empty when the reference or all others lack what it takes. */
    private static Optional<LedgerTable> table(LedgerSheet sheet, Kind kind, List<LedgerWorkload> workloads) {
        Optional<Speeds.Speed> reference = Speeds.of(sheet.referenceDevice(), workloads, kind);
        List<LedgerDevice> devices = sheet.devices().stream().filter(device -> Speeds.of(device, workloads, kind).isPresent()).toList();
        if (reference.isEmpty() || devices.size() < 2) {
            return Optional.empty();
        }
        List<Speeds.Speed> speeds = devices.stream().map(device -> Speeds.of(device, workloads, kind).orElseThrow()).toList();
        Ranks ranks = new Ranks(speeds, sheet.level());
        List<LedgerRow> rows = new ArrayList<>();
        for (int i = 0; i < devices.size(); i++) {
            LedgerDevice device = devices.get(i);
            boolean isReference = device.name().equals(sheet.reference());
            Speeds.Speed difference = speeds.get(i).minus(reference.get());
            Standing standing = isReference ? Standing.ofReference() : Standing.of(difference.log(), difference.stated(), sheet.level());
            Optional<LedgerFigure> figure = workloads.size() == 1 ? Optional.of(device.figures().get(workloads.get(0).name())) : Optional.empty();
            rows.add(new LedgerRow(device.name(), figure, value(workloads, kind, speeds.get(i), figure), standing,
                    isReference || kind != Kind.SPEED ? Optional.empty() : ratioOfMeans(sheet, workloads, figure, difference.log().degreesOfFreedom()),
                    OptionalInt.of(ranks.best(i)), OptionalInt.of(ranks.worst(i)), workloads.size()));
        }
        rows.sort(Comparator.comparingDouble((LedgerRow row) -> -row.standing().logSpeedRatio()));
        return Optional.of(new LedgerTable(kind, workloads.size() == 1 ? Optional.of(workloads.get(0)) : Optional.empty(), rows));
    }

    private static OptionalDouble value(List<LedgerWorkload> workloads, Kind kind, Speeds.Speed speed, Optional<LedgerFigure> figure) {
        if (figure.isEmpty()) {
            return OptionalDouble.empty();
        }
        boolean speedIsValue = workloads.get(0).better() == Better.HIGHER;
        return kind == Kind.SPEED ? OptionalDouble.of(figure.get().value()) : speedIsValue ? OptionalDouble.of(Math.exp(speed.log().estimate())) : OptionalDouble.empty();
    }

    private static Optional<ConfidenceInterval> ratioOfMeans(LedgerSheet sheet, List<LedgerWorkload> workloads, Optional<LedgerFigure> figure, double degreesOfFreedom) {
        if (figure.isEmpty()) {
            return Optional.empty();
        }
        LedgerFigure other = sheet.referenceDevice().figures().get(workloads.get(0).name());
        boolean higher = workloads.get(0).better() == Better.HIGHER;
        LedgerFigure above = higher ? figure.get() : other;
        LedgerFigure below = higher ? other : figure.get();
        if (!above.isStated() || !below.isStated()) {
            return Optional.empty();
        }
        return Optional.of(Fieller.of(above.value(), below.value(), variance(above), variance(below), 0, degreesOfFreedom, sheet.level()).interval());
    }

    private static double variance(LedgerFigure figure) {
        double uncertainty = figure.value() * figure.uncertaintyPercent().orElseThrow() / 100;
        return uncertainty * uncertainty;
    }

    private static List<String> warnings(LedgerSheet sheet) {
        List<String> warnings = new ArrayList<>();
        for (LedgerDevice device : sheet.devices()) {
            for (LedgerWorkload workload : sheet.workloads()) {
                LedgerFigure figure = device.figures().get(workload.name());
                if (figure == null) {
                    warnings.add(device.name() + " has no figure of " + workload.name() + (sheet.workloads().size() > 1 ? "; it is left out over all workloads" : ""));
                } else if (!figure.isStated()) {
                    warnings.add(device.name() + ", " + workload.name() + ": the source does not say how sure the value is, so no difference to it can be told from noise");
                } else if (figure.uncertaintyPercent().getAsDouble() > LARGE_PERCENT) {
                    warnings.add(device.name() + ", " + workload.name() + ": an uncertainty of more than " + Math.round(LARGE_PERCENT)
                            + " % is too large for logarithms to be near a normal distribution; trust the ratio of means more");
                }
            }
        }
        return warnings;
    }
}
