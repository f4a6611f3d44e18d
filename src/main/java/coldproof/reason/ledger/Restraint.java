package coldproof.reason.ledger;

/**
 * A unit that something holds back beside a free one of the same silicon.
 *
 * @param silicon what they share
 * @param constrained name of the unit held back
 * @param constraint what holds it back
 * @param unconstrained name of the free one
 * @param standing of the unit held back against the free one, over the workloads both have
 * @param workloads how many those are
 */
public record Restraint(String silicon, String constrained, String constraint, String unconstrained, Standing standing, int workloads) {}
