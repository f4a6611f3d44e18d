package coldproof.face.cli;

import coldproof.quantity.QuantityText;
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
 */
public record Streams(BufferedReader in, PrintWriter out, PrintWriter err, boolean interactive, int columns, boolean colour) {
    /** Width where nothing better is known. */
    public static final int USUAL_COLUMNS = 80;
    private static final int FEWEST_COLUMNS = 40;
    private static final int MOST_COLUMNS = 200; // longer lines are hard to follow

    /**
     * The width to write for.
     *
     * @param interactive whether a person sits at a terminal; a pipe or file always gets the usual width, so that it can be compared
     * @param said what the environment says the terminal has; counts as long as it is a whole number from 40 to 200
     */
    public static int columns(boolean interactive, Optional<String> said) {
        if (!interactive || said.isEmpty()) {
            return USUAL_COLUMNS;
        }
        return QuantityText.whole(said.get().strip(), FEWEST_COLUMNS, MOST_COLUMNS).orElse(USUAL_COLUMNS);
    }
}
