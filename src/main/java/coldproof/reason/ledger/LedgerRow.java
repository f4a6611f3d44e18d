package coldproof.reason.ledger;

import coldproof.stats.interval.ConfidenceInterval;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A device in one comparison.
 *
 * @param device its name
 * @param figure the figure compared; empty in a comparison over workloads
 * @param value the speed per watt or per unit of money where that is compared, else the figure's value; empty over workloads
 * @param standing against the reference
 * @param ratioOfMeans Fieller's interval of the ratio of the two speeds as a check on the logarithms; empty where it does not apply
 * @param bestRank the best rank the data allow, first is 1; empty when the device is not ranked
 * @param worstRank the worst
 * @param workloads how many workloads went in
 */
public record LedgerRow(String device, Optional<LedgerFigure> figure, OptionalDouble value, Standing standing, Optional<ConfidenceInterval> ratioOfMeans,
        OptionalInt bestRank, OptionalInt worstRank, int workloads) {}
