/**
 * What both faces share: the talk at the bench line by line, and the ways one face reaches the other without knowing it
 * ({@link coldproof.face.dialogue.VerbDesk}, {@link coldproof.face.dialogue.Screens}). May use {@code job}, {@code report} and the pure
 * rooms' types; neither picocli nor JLine.
 */
package coldproof.face.dialogue;
