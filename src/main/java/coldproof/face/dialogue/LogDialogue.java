package coldproof.face.dialogue;

import coldproof.job.LogJob;
import coldproof.job.LogReply;
import coldproof.quantity.Refused;
import coldproof.reason.checklist.Ask;
import coldproof.reason.checklist.Progress;
import coldproof.reason.checklist.Question;
import coldproof.report.text.ChecklistText;
import coldproof.report.text.ProblemText;
import coldproof.report.text.Wrap;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** The checklist by whole lines: needs no terminal, moves no cursor, and reads well aloud. */
public final class LogDialogue {
    private final LogJob log;
    private final Lines lines;
    private final Function<Question, List<String>> instruments;
    private Progress shown;
    private List<String> told = List.of();

    private LogDialogue(LogJob log, Lines lines, Function<Question, List<String>> instruments) {
        this.log = log;
        this.lines = lines;
        this.instruments = instruments;
    }

    /** Leads through the checklist until the person leaves, all is done, or no more lines come. */
    public static void run(LogJob log, Lines lines) {
        run(log, lines, question -> List.of());
    }

    /** The same with what simulated instruments show before each question, as in a dry run. */
    public static void run(LogJob log, Lines lines, Function<Question, List<String>> instruments) {
        new LogDialogue(log, lines, instruments).run();
    }

    /** Says sentences, each on lines of its own. */
    public static void tell(Lines lines, List<String> said) {
        StringBuilder text = new StringBuilder();
        said.forEach(sentence -> Wrap.indented(sentence, "", lines.columns(), text));
        lines.out().print(text);
        lines.out().flush();
    }

    private void run() {
        boolean leaves = log.question().ask() == Ask.FINISHED;
        while (!leaves) {
            Optional<String> line = ask(log.question());
            if (line.isEmpty()) {
                return;
            }
            leaves = take(line.get()) || log.question().ask() == Ask.FINISHED;
        }
    }

    private Optional<String> ask(Question question) {
        StringBuilder text = new StringBuilder();
        boolean sameTrial = question.progress().equals(shown);
        if (!sameTrial) {
            shown = question.progress();
            text.append('\n');
            Wrap.indented(ChecklistText.progress(shown) + " (" + ChecklistText.done(shown) + ")", "", lines.columns(), text);
            MeterLines.of(log).forEach(meter -> Wrap.indented(meter, "  ", lines.columns(), text));
        }
        List<String> instructions = ChecklistText.instructions(question, log.view().plan());
        if (!instructions.equals(told)) {
            List<String> before = sameTrial ? told : List.of();
            instructions.stream().filter(line -> !before.contains(line)).forEach(line -> Wrap.indented(line, "  ", lines.columns(), text));
            told = instructions;
        }
        instruments.apply(question).forEach(line -> Wrap.indented(line, "  ", lines.columns(), text));
        lines.out().print(text);
        return lines.ask(ChecklistText.prompt(question, log.view().plan()) + "> ");
    }

    private boolean take(String line) {
        try {
            LogReply reply = log.answer(line);
            tell(lines, reply.said());
            return reply.leaves();
        } catch (Refused refused) {
            lines.out().print(ProblemText.of(refused.problems()));
            lines.out().flush();
            return false;
        }
    }
}
