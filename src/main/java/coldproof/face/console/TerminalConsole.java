package coldproof.face.console;

import coldproof.face.dialogue.Screens;
import coldproof.face.dialogue.VerbDesk;
import coldproof.job.LogJob;
import coldproof.job.Machine;
import coldproof.job.StudyOverview;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicReference;
import org.jline.reader.EndOfFileException;
import org.jline.reader.LineReader;
import org.jline.reader.LineReaderBuilder;
import org.jline.reader.UserInterruptException;
import org.jline.reader.impl.DefaultParser;
import org.jline.reader.impl.history.DefaultHistory;
import org.jline.terminal.Terminal;
import org.jline.utils.InfoCmp;

/** The console at a terminal. */
public final class TerminalConsole {
    private static final int INTERRUPTED = 130;
    private static final String PROMPT = "coldproof> ";
    private static final String HISTORY = ".coldproof-history";
    private final Terminal terminal;
    private final Shell shell;
    private final LineReader reader;
    private final DefaultHistory history;
    private Path historyOf;

    private TerminalConsole(Terminal terminal, VerbDesk desk, Machine machine, Path folder, boolean styled, boolean plain) {
        this.terminal = terminal;
        this.shell = new Shell(desk, machine, folder, new TerminalTalk(terminal, styled, plain));
        this.history = new DefaultHistory();
        DefaultParser parser = new DefaultParser();
        parser.setEscapeChars(null); // a backslash belongs to file names
        parser.setEofOnUnclosedQuote(false);
        this.reader = LineReaderBuilder.builder().terminal(terminal).appName("coldproof").parser(parser).history(history)
                .completer(new VerbCompleter(desk, shell::folder)).option(LineReader.Option.DISABLE_EVENT_EXPANSION, true)
                .option(LineReader.Option.CASE_INSENSITIVE, true).option(LineReader.Option.HISTORY_IGNORE_SPACE, true).build();
    }

    /**
     * Opens the console at the terminal that the program was started from. Making the terminal ready takes longer than reading a study, so where it
     * is of a known kind its person sees the study and the prompt before: what is typed meanwhile stays in the terminal and is taken then.
     *
     * @param out the same terminal, as it is before it is made ready
     * @param columns its width, as far as it is known by then
     * @param styled whether bold and inverse may be used
     * @param plain whether to talk by lines only
     * @return the exit status
     */
    public static int run(VerbDesk desk, Machine machine, Path folder, PrintWriter out, int columns, boolean styled, boolean plain) {
        boolean shown = SystemTerminal.isKnown();
        if (shown) {
            out.print(Shell.home(desk, StudyOverview.of(folder), columns) + PROMPT);
            out.flush();
        }
        try (Terminal terminal = SystemTerminal.open()) {
            TerminalConsole console = new TerminalConsole(terminal, desk, machine, folder, styled, plain);
            if (shown) {
                terminal.puts(InfoCmp.Capability.carriage_return);
                terminal.puts(InfoCmp.Capability.clr_eol); // the prompt is drawn again, in the same place, with what was typed
            } else {
                console.shell.showHome();
            }
            return console.loop();
        } catch (IOException broken) {
            throw new UncheckedIOException("the terminal cannot be opened", broken);
        }
    }

    /** The console at a given terminal, which stays open. */
    static int run(Terminal terminal, VerbDesk desk, Machine machine, Path folder, boolean styled, boolean plain) {
        TerminalConsole console = new TerminalConsole(terminal, desk, machine, folder, styled, plain);
        console.shell.showHome();
        return console.loop();
    }

    /** Talks with the whole screen for a verb that was started from the command line. */
    public static Screens screens(boolean styled) {
        return log -> logOn(log, styled);
    }

    private static void logOn(LogJob log, boolean styled) {
        try (Terminal terminal = SystemTerminal.open()) {
            new TerminalTalk(terminal, styled, false).log(log);
        } catch (IOException broken) {
            throw new UncheckedIOException("the terminal cannot be opened", broken);
        }
    }

    private int loop() {
        boolean goesOn = true;
        while (goesOn) {
            remember();
            try {
                goesOn = guarded(reader.readLine(PROMPT));
            } catch (UserInterruptException interrupted) {
                if (interrupted.getPartialLine().isBlank()) {
                    terminal.writer().println("quit leaves; everything recorded is on disk.");
                }
            } catch (EndOfFileException end) {
                goesOn = false;
            }
        }
        return shell.status();
    }

    /** Runs a line so that Ctrl-C ends what it does and not the console; a second one ends the program. */
    private boolean guarded(String line) {
        Thread worker = Thread.currentThread();
        AtomicReference<Boolean> asked = new AtomicReference<>(false);
        Terminal.SignalHandler before = terminal.handle(Terminal.Signal.INT, signal -> {
            if (asked.getAndSet(true)) {
                System.exit(INTERRUPTED);
            }
            worker.interrupt();
        });
        try {
            return shell.execute(line);
        } finally {
            terminal.handle(Terminal.Signal.INT, before);
            Thread.interrupted();
        }
    }

    /** The history is the study's own; without a study nothing is kept. */
    private void remember() {
        if (shell.folder().equals(historyOf)) {
            return;
        }
        boolean study = StudyOverview.isStudy(shell.folder());
        if (historyOf == null || study) {
            historyOf = study ? shell.folder() : null;
            reader.setVariable(LineReader.HISTORY_FILE, study ? shell.folder().resolve(HISTORY).toAbsolutePath() : null);
            if (study) {
                history.attach(reader);
            }
        }
    }
}
