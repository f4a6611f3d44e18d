/**
 * The command line: words in, calls to {@code job}, text or one JSON document out, an exit status. Enter at
 * {@link coldproof.face.cli.CommandLineFace#run}. Only the verb that was asked for is built, without reflection, because starting is a
 * feature. May use {@code job}, {@code report}, the pure rooms' types, and picocli.
 */
package coldproof.face.cli;
