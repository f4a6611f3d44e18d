/**
 * Safety rules as they stand in {@code safety/*.yaml}, and what a study changes about them. Enter at
 * {@link coldproof.files.rules.RulesReader#read}. Strict: every problem is reported with its place. May use {@code quantity},
 * {@code reason.safety} and {@code files.yaml}.
 */
package coldproof.files.rules;
