package coldproof.face.console;

import coldproof.job.LogJob;
import coldproof.job.LogReply;
import coldproof.quantity.Refused;
import coldproof.reason.checklist.Ask;
import coldproof.reason.checklist.Command;
import coldproof.reason.checklist.Question;
import coldproof.report.text.ProblemText;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.jline.terminal.Attributes;
import org.jline.terminal.Size;
import org.jline.terminal.Terminal;
import org.jline.utils.Display;
import org.jline.utils.InfoCmp.Capability;

/** The checklist on the whole screen: one question at a time, one key a step. */
final class LogScreen {
    private static final int TICK_MILLIS = 250;
    private static final long ONE_PRESS_NANOS = 400_000_000; // one press may arrive twice: as a signal of the terminal and of the process
    private static final int CONTROL_C = 3;
    private static final int CONTROL_D = 4;
    private static final int CONTROL_L = 12;
    private static final int CONTROL_U = 21;
    private static final int ESCAPE = 27;
    private static final int DELETE = 127;
    private static final int LONGEST_TYPED = 10_000;
    private final Terminal terminal;
    private final boolean styled;
    private final LogJob log;
    private final Display display;
    private final StringBuilder typed = new StringBuilder();
    private final List<String> told = new ArrayList<>();
    private List<String> said = List.of();
    private Size size = Size.of(1, 1);
    private boolean rang;
    private boolean leaving;
    private long interruptedAt = System.nanoTime() - ONE_PRESS_NANOS;
    private volatile boolean resized = true;
    private volatile boolean interrupt;
    private volatile boolean continued;

    private LogScreen(Terminal terminal, boolean styled, LogJob log) {
        this.terminal = terminal;
        this.styled = styled;
        this.log = log;
        this.display = new Display(terminal, true);
    }

    /** Whether a terminal can show it. */
    static boolean fits(Terminal terminal) {
        return terminal.getStringCapability(Capability.cursor_address) != null && terminal.getStringCapability(Capability.clear_screen) != null
                && terminal.getColumns() >= 30 && terminal.getRows() >= 10;
    }

    /**
     * Leads through the checklist.
     *
     * @return what was said on the way, to be shown where it stays
     */
    static List<String> run(Terminal terminal, boolean styled, LogJob log) {
        LogScreen screen = new LogScreen(terminal, styled, log);
        Attributes before = terminal.enterRawMode();
        Terminal.SignalHandler resizeBefore = terminal.handle(Terminal.Signal.WINCH, signal -> screen.resized = true);
        Terminal.SignalHandler interruptBefore = terminal.handle(Terminal.Signal.INT, signal -> screen.interrupt = true);
        Terminal.SignalHandler continueBefore = terminal.handle(Terminal.Signal.CONT, signal -> screen.continued = true);
        terminal.puts(Capability.enter_ca_mode);
        terminal.puts(Capability.keypad_local);
        try {
            screen.loop();
        } catch (IOException broken) {
            throw new UncheckedIOException("the terminal cannot be read", broken);
        } finally {
            terminal.puts(Capability.exit_ca_mode);
            terminal.setAttributes(before);
            terminal.handle(Terminal.Signal.WINCH, resizeBefore);
            terminal.handle(Terminal.Signal.INT, interruptBefore);
            terminal.handle(Terminal.Signal.CONT, continueBefore);
            terminal.flush();
        }
        return screen.told;
    }

    private void loop() throws IOException {
        boolean leaves = log.question().ask() == Ask.FINISHED;
        while (!leaves) {
            draw();
            int key = terminal.reader().read(TICK_MILLIS);
            if (key == -1) {
                return;
            }
            leaves = key >= 0 && take(key) || signalled();
        }
    }

    /** What signals asked for while a key was waited for; true when the checklist is left. */
    private boolean signalled() {
        if (continued) {
            continued = false;
            resized = true;
            terminal.enterRawMode(); // the shell that had the terminal meanwhile set it to its own ways
            terminal.puts(Capability.enter_ca_mode);
        }
        if (interrupt) {
            interrupt = false;
            return interrupted();
        }
        return false;
    }

    private void draw() {
        if (resized) {
            resized = false;
            size = Size.of(Math.max(1, terminal.getColumns()), Math.max(1, terminal.getRows()));
            display.clear();
            display.resize(size);
        }
        ring();
        boolean unicode = StandardCharsets.UTF_8.equals(terminal.encoding());
        LogPicture.Drawn drawn = new LogPicture(size.getRows(), size.getColumns(), styled, unicode).draw(log, said, typed.toString());
        display.update(drawn.lines(), size.cursorPos(drawn.cursorRow(), drawn.cursorColumn()));
    }

    /** Rings once when the soak is over. */
    private void ring() {
        boolean over = log.question().ask() == Ask.SOAK && log.stepSeconds() >= log.view().plan().budget().soakSeconds();
        if (over && !rang) {
            terminal.puts(Capability.bell);
            terminal.flush();
        }
        rang = over;
    }

    /** Takes a key; true when the checklist is left. */
    private boolean take(int key) throws IOException {
        switch (key) {
            case CONTROL_C -> {
                return interrupted();
            }
            case CONTROL_D -> {
                return typed.length() == 0;
            }
            case CONTROL_L -> resized = true;
            case CONTROL_U -> typed.setLength(0);
            case ESCAPE -> swallowSequence();
            case '\b', DELETE -> typed.setLength(typed.length() == 0 ? 0 : typed.offsetByCodePoints(typed.length(), -1));
            case '\r', '\n' -> {
                return answer(typed.toString());
            }
            default -> {
                return character((char) key);
            }
        }
        leaving = false;
        return false;
    }

    private boolean interrupted() {
        long now = System.nanoTime();
        boolean same = now - interruptedAt < ONE_PRESS_NANOS;
        interruptedAt = now;
        if (leaving) {
            return !same;
        }
        leaving = true;
        said = List.of("Nothing is lost: every answer that was recorded is on disk" + (typed.length() == 0 ? "." : ", and what you are typing stays here.")
                + " Ctrl-C again leaves.");
        return false;
    }

    private boolean character(char key) {
        leaving = false;
        if (key < ' ') {
            return false;
        }
        if (typed.length() == 0 && actsAtOnce(log.question(), key)) {
            return answer(Character.toString(key));
        }
        if (typed.length() < LONGEST_TYPED) {
            typed.append(key);
        }
        return false;
    }

    /** Whether a key needs no Enter: a command where text is not asked for, or one of two words. */
    private static boolean actsAtOnce(Question question, char key) {
        String letter = Character.toString(Character.toLowerCase(key));
        return switch (question.ask()) {
            case SKIP_REASON, ABORT_REASON, NOTE, SAFETY, PRECIPITATION -> false;
            case CONFIRM_SCORE -> letter.equals("y") || letter.equals("n");
            case POWER -> "wb".contains(letter) || isCommand(letter);
            case RESUME -> !letter.equals("s") && isCommand(letter);
            default -> isCommand(letter);
        };
    }

    private static boolean isCommand(String letter) {
        return Command.in(letter).filter(said -> said.command() != Command.ELSEWHERE).isPresent();
    }

    private boolean answer(String text) {
        leaving = false;
        try {
            LogReply reply = log.answer(text);
            said = reply.said();
            told.addAll(said);
            typed.setLength(0);
            return reply.leaves();
        } catch (Refused refused) {
            said = ProblemText.of(refused.problems()).lines().map(String::strip).toList();
            if (!log.isUnwritten()) {
                typed.setLength(0);
            }
            return false;
        }
    }

    /** Keys that send an escape sequence do nothing here; its rest must not be taken for letters. */
    private void swallowSequence() throws IOException {
        int next = terminal.reader().read(TICK_MILLIS / 5);
        if (next == '[' || next == 'O') {
            int last = terminal.reader().read(TICK_MILLIS / 5);
            while (last >= 0 && (last < '@' || last > '~')) {
                last = terminal.reader().read(TICK_MILLIS / 5);
            }
        }
    }
}
