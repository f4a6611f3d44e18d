/**
 * The mathematics of noise: distributions, power, comparisons, looks, models, randomisation, series. Pure functions over arrays and
 * records that know nothing of studies or devices; effects and standard deviations are those of log scores. Enter at the packages below.
 * May use Commons Math; never a file, a clock or chance of its own.
 */
package coldproof.stats;
