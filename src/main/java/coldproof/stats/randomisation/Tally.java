package coldproof.stats.randomisation;

/**
 * How many assignments give what.
 *
 * @param total all of them
 * @param extreme those with an absolute statistic at least as large as the observed one
 * @param greater those with a statistic at least as large
 * @param less those with a statistic at most as large
 */
record Tally(double total, double extreme, double greater, double less) {}
