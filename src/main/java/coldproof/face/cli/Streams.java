package coldproof.face.cli;

import coldproof.quantity.QuantityText;
import coldproof.report.text.Wrap;
import java.io.BufferedReader;
import java.io.PrintWriter;
import java.util.Optional;

/**
 * Where words come from and go to.
 *
 * @param in lines typed or piped
 * @param out answers
 * @param err messages
 * @param interactive whether a person sits at a terminal
 * @param columns width to write for
 * @param colour whether colour may be used
 * @param console whether the console shows the answer, which itself says what comes next
 */
public record Streams(BufferedReader in, PrintWriter out, PrintWriter err, boolean interactive, int columns, boolean colour, boolean console) {
    /** Those of the command line. */
    public Streams(BufferedReader in, PrintWriter out, PrintWriter err, boolean interactive, int columns, boolean colour) {
        this(in, out, err, interactive, columns, colour, false);
    }

    private static final int WIDEST_SCREEN = 10_000; // columns; more is no width

    /**
     * The width to write for.
     *
     * @param interactive whether a person sits at a terminal; a pipe or file always gets the usual width, so that it can be compared
     * @param said what the environment says the terminal has; counts as far as it is a whole number
     */
    public static int columns(boolean interactive, Optional<String> said) {
        if (!interactive || said.isEmpty()) {
            return Wrap.USUAL_COLUMNS;
        }
        return Wrap.width(QuantityText.whole(said.get().strip(), 0, WIDEST_SCREEN).orElse(0));
    }
}
