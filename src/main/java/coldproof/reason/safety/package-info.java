/**
 * Judges weather, device and person against the safety rules. Enter at {@link coldproof.reason.safety.Cautions#judge}; rules are data
 * ({@link coldproof.reason.safety.SafetyRule}, read by {@code files.rules}), what is known of the bench is a
 * {@link coldproof.reason.safety.SafetyScene}, the answer a {@link coldproof.reason.safety.SafetyCard}. Pure: may use {@code quantity},
 * {@code physics}, {@code plan} and {@code study}; never files, time or random numbers of its own.
 */
package coldproof.reason.safety;
