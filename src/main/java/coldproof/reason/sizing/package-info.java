/**
 * How many sessions, trials or pairs it takes, and what a budget can see. Enter at {@link coldproof.reason.sizing.Sizing#solve}. Pure. May
 * use {@code quantity}, {@code plan}, {@code stats}, {@code reason.orders}, {@code reason.looks} and {@code reason.noise}.
 */
package coldproof.reason.sizing;
