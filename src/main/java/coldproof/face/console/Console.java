package coldproof.face.console;

import coldproof.face.dialogue.Lines;
import coldproof.face.dialogue.LogDialogue;
import coldproof.face.dialogue.VerbDesk;
import coldproof.job.LogJob;
import coldproof.job.Machine;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;

/** The console, with or without a terminal. */
public final class Console {
    private Console() {}

    /**
     * Reads lines until there are no more, without a terminal.
     *
     * @param lines where they come from
     * @return the status of the last line
     */
    public static int piped(VerbDesk desk, Machine machine, Path folder, Lines lines) {
        Shell shell = new Shell(desk, machine, folder, new PipedTalk(lines));
        shell.showHome();
        boolean goesOn = true;
        while (goesOn) {
            Optional<String> line = lines.ask("coldproof> ");
            goesOn = line.isPresent() && shell.execute(line.get());
        }
        return shell.status();
    }

    /** Everything by lines. */
    private record PipedTalk(Lines lines) implements Talk {
        @Override
        public void log(LogJob log) {
            LogDialogue.run(log, lines);
        }

        @Override
        public Optional<String> ask(String prompt) {
            return lines.ask(prompt);
        }

        @Override
        public PrintWriter out() {
            return lines.out();
        }

        @Override
        public int columns() {
            return lines.columns();
        }
    }
}
