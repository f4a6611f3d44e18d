package coldproof.reason.ledger;

import java.util.List;

/**
 * Devices side by side.
 *
 * @param sheet what it was made from
 * @param tables the comparisons: each workload, then over all, then per watt and per unit of money
 * @param restraints constrained beside unconstrained units of the same silicon
 * @param warnings what a careful reader should know, one sentence each
 */
public record Ledger(LedgerSheet sheet, List<LedgerTable> tables, List<Restraint> restraints, List<String> warnings) {
    /** Copies. */
    public Ledger {
        tables = List.copyOf(tables);
        restraints = List.copyOf(restraints);
        warnings = List.copyOf(warnings);
    }
}
