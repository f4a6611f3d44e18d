/**
 * Intervals for differences and ratios, and uncertainties carried through a formula. Enter at the class named after the method
 * ({@code Fieller}, {@code BiasCorrectedBootstrap}, {@code RankTests}, {@code Propagation}); results are records. Pure: numbers in, numbers
 * out, chance handed in as a {@link java.util.random.RandomGenerator}. May use {@code stats.distribution} and Commons Math; never files or time.
 */
package coldproof.stats.interval;
