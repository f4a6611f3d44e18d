/**
 * Looking at data before all of them are there without raising the false-alarm rate. Enter at
 * {@link coldproof.stats.sequential.SequentialBoundary} (when may one stop), {@link coldproof.stats.sequential.SequentialDesign} (what looking
 * costs and saves), {@link coldproof.stats.sequential.StagewiseInference} (what to report after stopping),
 * {@link coldproof.stats.sequential.StudentLooks} (small studies, whose noise is estimated) and
 * {@link coldproof.stats.sequential.ConditionalPower} (is it worth going on). Pure: chance comes in as a generator. May use
 * {@code stats.distribution}, {@code stats.interval} and {@code stats.model}; never files or time.
 */
package coldproof.stats.sequential;
