/**
 * Looks at values in the order in which they were taken: drift, autocorrelation, outliers, normality, spread, warm-up. Enter at the class
 * named after the test; results are records. They inform and never drop a value. Pure: arrays in, records out. May use
 * {@code stats.distribution}, {@code stats.interval}, {@code stats.model} and Commons Math; never files, time or chance.
 */
package coldproof.stats.series;
