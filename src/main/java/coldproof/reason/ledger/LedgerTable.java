package coldproof.reason.ledger;

import java.util.List;
import java.util.Optional;

/**
 * One comparison of the devices.
 *
 * @param kind what is compared
 * @param workload the workload; empty for the geometric mean over all
 * @param rows the devices that have what it takes, best first; the reference is among them
 */
public record LedgerTable(Kind kind, Optional<LedgerWorkload> workload, List<LedgerRow> rows) {
    /** Copies. */
    public LedgerTable {
        rows = List.copyOf(rows);
    }

    /** What is compared. */
    public enum Kind {
        /** Speed. */
        SPEED("speed"),
        /** Speed per watt. */
        PER_WATT("per-watt"),
        /** Speed per unit of money. */
        PER_MONEY("per-money");

        private final String code;

        Kind(String code) {
            this.code = code;
        }

        /** The word in JSON. */
        public String code() {
            return code;
        }
    }
}
