package coldproof.face.console;

import coldproof.face.dialogue.LogDialogue;
import coldproof.job.LogJob;
import coldproof.report.text.Wrap;
import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import org.jline.reader.EndOfFileException;
import org.jline.reader.LineReader;
import org.jline.reader.LineReaderBuilder;
import org.jline.reader.UserInterruptException;
import org.jline.terminal.Terminal;

/** Talks at a terminal: lines are edited, the checklist takes the whole screen where it fits and was not asked to be plain. */
final class TerminalTalk implements Talk {
    private final Terminal terminal;
    private final boolean styled;
    private final boolean plain;
    private LineReader reader;

    TerminalTalk(Terminal terminal, boolean styled, boolean plain) {
        this.terminal = terminal;
        this.styled = styled;
        this.plain = plain;
    }

    @Override
    public Optional<String> ask(String prompt) {
        try {
            return Optional.of(reader().readLine(prompt.replace("%", "%%"))); // a lone percent sign is a command to the reader
        } catch (EndOfFileException | UserInterruptException ended) {
            return Optional.empty();
        }
    }

    /** Made when something is first asked: making it takes a while, and most sittings at the console never need it. */
    private LineReader reader() {
        if (reader == null) {
            reader = LineReaderBuilder.builder().terminal(terminal).option(LineReader.Option.DISABLE_EVENT_EXPANSION, true)
                    .variable(LineReader.DISABLE_HISTORY, true).variable(LineReader.DISABLE_COMPLETION, true).build();
        }
        return reader;
    }

    @Override
    public void log(LogJob log) {
        if (plain || !LogScreen.fits(terminal)) {
            LogDialogue.run(log, this);
            return;
        }
        List<String> told = LogScreen.run(terminal, styled, log);
        LogDialogue.tell(this, told);
    }

    @Override
    public PrintWriter out() {
        return terminal.writer();
    }

    @Override
    public int columns() {
        return Wrap.width(terminal.getColumns());
    }
}
