/**
 * What the person touches. Enter at {@link coldproof.face.Main}; {@code face.cli} and {@code face.console} are two equals that never
 * meet and hold no sums: both call {@code job}.
 */
package coldproof.face;
