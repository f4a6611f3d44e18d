package coldproof.face.console;

import coldproof.face.dialogue.Lines;
import coldproof.face.dialogue.VerbDesk;
import coldproof.job.Machine;
import coldproof.job.demo.PassingStudy;
import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.jline.terminal.Terminal;
import org.jline.terminal.impl.ExternalTerminal;

/** Walks the usual paths of the console on a terminal that nobody sees, and without one, for the archive of classes made at package time. */
public final class ConsoleWalk {
    private static final String KEYS = "help\rstatus\rquit\r";
    private static final String LINES = "status\nquit\n";
    private static final int COLUMNS = 80;

    private ConsoleWalk() {}

    /** Opens the console where no study is, on one that begins, and on one that is run; its answers go nowhere. */
    public static void walk(VerbDesk desk, Machine machine) {
        SystemTerminal.warm();
        try (PassingStudy study = PassingStudy.make()) {
            Path fresh = study.folder().resolveSibling("begun");
            PrintWriter nowhere = new PrintWriter(Writer.nullWriter());
            desk.run(List.of("plan", "new", "--from", "chilled-air", "--study", fresh.toString()), nowhere, nowhere, COLUMNS);
            desk.run(List.of("plan", "freeze", "--study", fresh.toString()), nowhere, nowhere, COLUMNS);
            for (Path folder : List.of(Path.of("no such folder"), fresh, study.folder())) {
                piped(desk, machine, folder);
                atTerminal(desk, machine, folder);
            }
        } catch (IOException broken) {
            throw new UncheckedIOException("a terminal in memory cannot be opened", broken);
        }
    }

    private static void piped(VerbDesk desk, Machine machine, Path folder) {
        Console.piped(desk, machine, folder, Lines.of(new BufferedReader(new StringReader(LINES)), new PrintWriter(Writer.nullWriter()), COLUMNS, false));
    }

    private static void atTerminal(VerbDesk desk, Machine machine, Path folder) throws IOException {
        InputStream keys = new ByteArrayInputStream(KEYS.getBytes(StandardCharsets.US_ASCII));
        try (Terminal terminal = new ExternalTerminal("walk", "xterm-256color", keys, OutputStream.nullOutputStream(), StandardCharsets.UTF_8)) {
            TerminalConsole.run(terminal, desk, machine, folder, false, false);
        }
    }
}
