/**
 * How noisy the bench is: run to run and session to session, with intervals, from one study or several. Enter at
 * {@link coldproof.reason.noise.NoiseReading#of}. Pure. May use {@code quantity}, {@code plan} and {@code stats}.
 */
package coldproof.reason.noise;
