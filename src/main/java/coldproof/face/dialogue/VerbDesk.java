package coldproof.face.dialogue;

import java.io.PrintWriter;
import java.util.List;

/** The verbs, for a face that does not know how they are read. */
public interface VerbDesk {
    /**
     * A verb for a list.
     *
     * @param name the word typed
     * @param purpose what it does, in a line
     * @param example a call that works
     */
    record Entry(String name, String purpose, String example) {}

    /**
     * An option of a verb, or its arguments without a name.
     *
     * @param name such as {@code --layout}; empty for arguments
     * @param label what stands for the value, such as {@code FILE} or {@code two|one}; empty for a switch
     * @param purpose what it is for
     */
    record Option(String name, String label, String purpose) {}

    /** Every verb, in the order of the job. */
    List<Entry> verbs();

    /** The options of a verb; empty for an unknown one. */
    List<Option> options(String verb);

    /**
     * Runs a verb; what goes wrong is said on {@code err}.
     *
     * @param words verb, options and arguments
     * @param columns width to write for
     * @return the exit status
     */
    int run(List<String> words, PrintWriter out, PrintWriter err, int columns);
}
