/**
 * Randomisation tests that permute exactly what the plan randomised. Enter at {@link coldproof.stats.randomisation.RandomisationTest} with
 * data, at {@link coldproof.stats.randomisation.RandomisationScheme} before there are any (number of assignments, smallest p). Pure: chance is
 * handed in as a {@link java.util.random.RandomGenerator}. May use {@code stats.interval}; never files or time.
 */
package coldproof.stats.randomisation;
