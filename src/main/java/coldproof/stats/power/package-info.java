/**
 * How likely a plan is to answer its question, and what it takes: exact power, sizes, smallest detectable effects. Enter at
 * {@link coldproof.stats.power.Power}, {@link coldproof.stats.power.SampleSize} and {@link coldproof.stats.power.DetectableEffect}; a
 * {@link coldproof.stats.power.Layout} says where the noise sits, a {@link coldproof.stats.power.Claim} what is to be shown. Effects and
 * standard deviations are those of natural logarithms of scores. May use {@code stats.distribution}; knows no plan, time or cost.
 */
package coldproof.stats.power;
