package coldproof.reason.ledger;

import coldproof.plan.Better;

/**
 * What the devices were measured with.
 *
 * @param name name of the workload
 * @param unit unit of its figures, may be empty
 * @param better which way is good
 */
public record LedgerWorkload(String name, String unit, Better better) {}
