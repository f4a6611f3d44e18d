/**
 * Distributions to reference precision: central and noncentral t, F and chi-square, the normal, Owen's Q, and the one-factor
 * multivariate t behind Dunnett's comparisons. Each tail has a method of its own, so that a small probability is never the difference of
 * 1 and something near 1. Enter at the class named for the distribution. Uses nothing but arithmetic; tables of nodes are computed at
 * first use.
 */
package coldproof.stats.distribution;
