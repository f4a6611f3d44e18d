/**
 * Several changes judged together so that the false-alarm rate holds for all of them. Enter at
 * {@link coldproof.stats.multiple.ManyToOne} (Dunnett: every change against one baseline) and {@link coldproof.stats.multiple.Holm} (any tests
 * whatever). Pure: arrays in, records out. May use {@code stats.distribution}, {@code stats.model} and {@code stats.interval}; never files,
 * time or chance.
 */
package coldproof.stats.multiple;
