/**
 * The console: opens on the study in a folder, says what is done and what comes next, and runs the same verbs as the command line. Enter at
 * {@link coldproof.face.console.Console}. {@link coldproof.face.console.Shell} understands lines and knows no terminal; only the classes that
 * draw and read keys touch JLine, so that it is loaded only when there is a terminal. May use {@code job}, {@code report},
 * {@code face.dialogue}, the pure rooms' types and JLine; never picocli, {@code face.cli} or files.
 */
package coldproof.face.console;
