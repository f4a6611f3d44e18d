package coldproof.face.dialogue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.util.Optional;

/** A talk by whole lines. */
public interface Lines {
    /** Shows the prompt and waits for a line; empty when there will be no more. */
    Optional<String> ask(String prompt);

    /** Where to write what is said. */
    PrintWriter out();

    /** Width to write for. */
    int columns();

    /** Lines from a stream; {@code echoes} says whether a terminal shows what is typed, so that the answer's line is ended already. */
    static Lines of(BufferedReader in, PrintWriter out, int columns, boolean echoes) {
        return new Lines() {
            @Override
            public Optional<String> ask(String prompt) {
                out.print(prompt);
                out.flush();
                try {
                    Optional<String> line = Optional.ofNullable(in.readLine());
                    if (!echoes) {
                        out.println();
                    }
                    return line;
                } catch (IOException broken) {
                    throw new UncheckedIOException("standard input cannot be read", broken);
                }
            }

            @Override
            public PrintWriter out() {
                return out;
            }

            @Override
            public int columns() {
                return columns;
            }
        };
    }
}
