/**
 * A simulated bench: an invented device as a network of heat, controllers and sensors, so that a study can be tried out before anyone
 * freezes and demonstrations have data whose truth is known. Enter at {@link coldproof.reason.rehearse.bench.Bench}; the device is a
 * {@link coldproof.reason.rehearse.bench.BenchParameters}, ready ones are in {@link coldproof.reason.rehearse.bench.InventedDevices}.
 * Everything that comes out is simulated and must be marked so by whoever shows it. Pure: chance is a
 * {@link java.util.random.RandomGenerator} handed in; same parameters and seed, same figures. Uses {@code quantity} only; never files,
 * time or threads.
 */
package coldproof.reason.rehearse.bench;
