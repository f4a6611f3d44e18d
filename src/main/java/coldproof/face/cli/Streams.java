package coldproof.face.cli;

import java.io.BufferedReader;
import java.io.PrintWriter;

/**
 * Where words come from and go to.
 *
 * @param in lines typed or piped
 * @param out answers
 * @param err messages
 * @param interactive whether a person sits at a terminal
 * @param columns width to write for
 * @param colour whether colour may be used
 */
public record Streams(BufferedReader in, PrintWriter out, PrintWriter err, boolean interactive, int columns, boolean colour) {}
