package coldproof.face.console;

import coldproof.face.cli.CommandLineDesk;
import coldproof.job.Machine;
import java.io.IOException;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.jline.terminal.Size;
import org.jline.terminal.Terminal;
import org.jline.terminal.impl.ExternalTerminal;

/** The console running against a terminal made of pipes: keys go in, a screen comes out. */
final class PumpedTerminal implements AutoCloseable {
    private static final long PATIENCE_MILLIS = 20_000; // a busy machine, not the console, needs it
    private final PipedOutputStream keys = new PipedOutputStream();
    private final ScreenImage screen;
    private final ExternalTerminal terminal;
    private final CompletableFuture<Integer> status;

    PumpedTerminal(int rows, int columns, Path folder, Machine machine) throws IOException {
        this("xterm-256color", rows, columns, folder, machine);
    }

    PumpedTerminal(String type, int rows, int columns, Path folder, Machine machine) throws IOException {
        screen = new ScreenImage(rows, columns);
        terminal = new ExternalTerminal("test", type, new PipedInputStream(keys, 1 << 16), screen, StandardCharsets.UTF_8);
        terminal.setSize(Size.of(columns, rows));
        status = CompletableFuture.supplyAsync(() -> TerminalConsole.run(terminal, new CommandLineDesk(false), machine, folder, true, false));
    }

    /** Types keys as a terminal would send them. */
    PumpedTerminal type(String text) throws IOException {
        keys.write(text.getBytes(StandardCharsets.UTF_8));
        keys.flush();
        return this;
    }

    /** Presses Ctrl-C. */
    PumpedTerminal interrupt() {
        terminal.raise(Terminal.Signal.INT);
        return this;
    }

    /** Changes the size of the window. */
    PumpedTerminal resize(int rows, int columns) {
        screen.resize(rows, columns);
        terminal.setSize(Size.of(columns, rows));
        terminal.raise(Terminal.Signal.WINCH);
        return this;
    }

    /** Waits until the screen shows a text. */
    PumpedTerminal await(String text) throws InterruptedException {
        long end = System.currentTimeMillis() + PATIENCE_MILLIS;
        while (!screen.text().contains(text)) {
            if (status.isCompletedExceptionally()) {
                status.join();
            }
            if (System.currentTimeMillis() > end) {
                throw new AssertionError("the screen never showed \"" + text + "\":\n" + screen.text());
            }
            Thread.sleep(10);
        }
        return this;
    }

    String text() {
        return screen.text();
    }

    int bells() {
        return screen.bells();
    }

    boolean echoes() {
        return terminal.echo();
    }

    /** The status the console ended with. */
    int ended() throws Exception {
        return status.get(PATIENCE_MILLIS, TimeUnit.MILLISECONDS);
    }

    @Override
    public void close() throws IOException {
        keys.close();
        terminal.close();
    }
}
