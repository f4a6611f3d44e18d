/**
 * Intervals for differences and ratios. Enter at the class named after the method ({@code Fieller}, {@code BiasCorrectedBootstrap}); results are records.
 * Pure: numbers in, numbers out, chance handed in as a {@link java.util.random.RandomGenerator}. May use {@code stats.distribution} and Commons Math; never
 * files or time.
 */
package coldproof.stats.interval;
