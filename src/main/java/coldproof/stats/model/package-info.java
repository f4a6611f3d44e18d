/**
 * Estimates of an effect in the right error stratum. Enter at {@link coldproof.stats.model.MixedModel} (sessions of any size),
 * {@link coldproof.stats.model.Strata} (balanced plans), {@link coldproof.stats.model.SessionMeans}, {@link coldproof.stats.model.Pairs},
 * {@link coldproof.stats.model.TwoGroups}, {@link coldproof.stats.model.WithinSessions} and {@link coldproof.stats.model.NoiseComponents}; all
 * return records. Pure: arrays in, records out. May use {@code stats.distribution}, {@code stats.interval} and Commons Math; never files, time
 * or chance.
 */
package coldproof.stats.model;
