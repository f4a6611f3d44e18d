package coldproof.reason.rehearse;

/**
 * What rehearsed studies took, on average.
 *
 * @param trials run
 * @param minutes in all; NaN where the plan gives no times
 * @param outdoorMinutes of these outdoors; NaN likewise
 */
public record Spent(double trials, double minutes, double outdoorMinutes) {}
