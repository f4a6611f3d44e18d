/**
 * The whole study simulated before anyone goes to the bench: how often it would pass, fail or stay undecided under one story and another, how
 * often it would be wrong, what it takes, and which changes of the plan help most. Enter at {@link coldproof.reason.rehearse.Rehearsal}.
 * Pure: the seed is handed in, every study has a stream of its own, and whoever calls says how the work is spread over threads. May use
 * {@code quantity}, {@code stats}, {@code plan} and its sibling rooms.
 */
package coldproof.reason.rehearse;
