/**
 * A simulated bench as a page of YAML: what is known of a device, the rest lent by an invented one. Enter at
 * {@link coldproof.files.bench.BenchReader} and {@link coldproof.files.bench.BenchWriter}. May use {@code files.yaml}, {@code quantity} and
 * {@code reason.rehearse.bench}.
 */
package coldproof.files.bench;
