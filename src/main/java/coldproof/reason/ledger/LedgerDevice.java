package coldproof.reason.ledger;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One unit of a device.
 *
 * @param name its name, unique in the ledger
 * @param silicon what it shares with other units, where known: constrained and unconstrained units of the same are compared
 * @param constraint what holds it back, such as {@code 35 W cap}; empty when nothing does
 * @param power what it draws, W, where known
 * @param price what it costs, above 0, in the ledger's currency
 * @param figures its figures by workload
 */
public record LedgerDevice(String name, Optional<String> silicon, Optional<String> constraint, Optional<LedgerFigure> power, OptionalDouble price,
        Map<String, LedgerFigure> figures) {
    /** Copies, keeping the order. */
    public LedgerDevice {
        figures = Collections.unmodifiableMap(new LinkedHashMap<>(figures));
    }
}
