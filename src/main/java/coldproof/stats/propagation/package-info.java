/**
 * How uncertainties of quantities pass into what is computed from them. Enter at {@link coldproof.stats.propagation.Combination}. May use
 * {@code stats.distribution} and {@code stats.interval}.
 */
package coldproof.stats.propagation;
