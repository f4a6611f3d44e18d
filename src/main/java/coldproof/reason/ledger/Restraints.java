package coldproof.reason.ledger;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds units of the same silicon of which one is held back and one is free. */
final class Restraints {
    private Restraints() {}

    static List<Restraint> of(LedgerSheet sheet) {
        List<Restraint> restraints = new ArrayList<>();
        for (LedgerDevice held : sheet.devices()) {
            for (LedgerDevice free : sheet.devices()) {
                if (held.constraint().isPresent() && free.constraint().isEmpty() && held.silicon().isPresent() && held.silicon().equals(free.silicon())) {
                    between(sheet, held, free).ifPresent(restraints::add);
                }
            }
        }
        return restraints;
    }

    private static Optional<Restraint> between(LedgerSheet sheet, LedgerDevice held, LedgerDevice free) {
        List<LedgerWorkload> shared = sheet.workloads().stream()
                .filter(workload -> held.figures().containsKey(workload.name()) && free.figures().containsKey(workload.name())).toList();
        if (shared.isEmpty()) {
            return Optional.empty();
        }
        Speeds.Speed difference = Speeds.of(held, shared, LedgerTable.Kind.SPEED).orElseThrow()
                .minus(Speeds.of(free, shared, LedgerTable.Kind.SPEED).orElseThrow());
        return Optional.of(new Restraint(held.silicon().orElseThrow(), held.name(), held.constraint().orElseThrow(), free.name(),
                Standing.of(difference.log(), difference.stated(), sheet.level()), shared.size()));
    }
}
