/**
 * Names what holds a device back. Enter at {@link coldproof.reason.limiter.Limiters#explain}: it takes the trials with their traces and
 * gives for each condition a {@link coldproof.reason.limiter.Limiter} or "unclear", with the evidence, the predictions of every
 * {@link coldproof.reason.limiter.Hypothesis} tested, what is ruled out, and the next experiment. Two signals are wanted: what is pinned
 * inside a trial, and how the device answers a change. Pure; may use {@code quantity}, {@code stats}, {@code plan} and {@code trace}.
 */
package coldproof.reason.limiter;
