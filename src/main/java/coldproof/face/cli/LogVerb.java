package coldproof.face.cli;

import coldproof.job.LogJob;
import coldproof.job.LogReply;
import coldproof.job.Machine;
import coldproof.job.OneShot;
import coldproof.quantity.Refused;
import coldproof.reason.checklist.Ask;
import coldproof.reason.checklist.Progress;
import coldproof.reason.checklist.Question;
import coldproof.report.json.ChecklistJson;
import coldproof.report.json.JsonObject;
import coldproof.report.text.ChecklistText;
import coldproof.report.text.ProblemText;
import coldproof.report.text.Wrap;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;

/** {@code log}: the checklist at the bench, line by line; or one entry from options. */
final class LogVerb implements Verb {
    @Override
    public void describe(CommandSpec spec) {
        Options.value(spec, "--score", "SCORE", "Record the next trial with this score and leave; \"60.1 61.0 60.8\" gives all its loops.");
        Options.value(spec, "--skip", "REASON", "Leave the next trial out.");
        Options.valueOrNone(spec, "--undo", "REASON", "Take back the last trial or skip.");
        Options.value(spec, "--note", "TEXT", "Write a note.");
        Options.valueOrNone(spec, "--pause", "REASON", "Stop for now.");
        Options.value(spec, "--abort", "REASON", "End the open session for good.");
        Options.value(spec, "--elsewhere", "FILE", Options.ELSEWHERE);
        Options.value(spec, "--die", "TEMPERATURE", "With --score: the die temperature before the trial.");
        Options.value(spec, "--battery", "PERCENT", "With --score: the battery's charge before the trial.");
        Options.value(spec, "--power", "wall|battery", "With --score: the power source.");
        Options.value(spec, "--soak", "TIME", "With --score: how long the device settled in this session.");
    }

    @Override
    public int run(Invocation call) {
        try (LogJob log = LogJob.open(call.study().toAbsolutePath(), call.path("--elsewhere"), Machine.atHand())) {
            call.messages().print(ProblemText.of(log.problems()));
            List<OneShot.Entry> entries = OneShot.entries(call::text);
            if (entries.isEmpty()) {
                new Dialogue(call, log).run();
            } else {
                tell(call.json() ? call.messages() : call.streams().out(), OneShot.run(log, entries), call.streams().columns());
            }
            log.elsewhere().forEach(call.messages()::println);
            Question next = log.question();
            String text = next.ask() == Ask.FINISHED ? "All trials are settled. Next: coldproof verdict\n"
                    : "Next: " + ChecklistText.progress(next.progress()) + "\n";
            call.answer(ChecklistJson.of(next, log.view().state()), text);
        }
        return ExitStatus.DONE;
    }

    private static void tell(PrintWriter out, List<String> said, int columns) {
        StringBuilder text = new StringBuilder();
        said.forEach(line -> Wrap.indented(line, "", columns, text));
        out.print(text);
        out.flush();
    }

    /** Questions and answers, a line each; needs no terminal. */
    private static final class Dialogue {
        private final Invocation call;
        private final LogJob log;
        private final PrintWriter out;
        private Progress shown;
        private List<String> told = List.of();

        Dialogue(Invocation call, LogJob log) {
            this.call = call;
            this.log = log;
            this.out = call.json() ? call.messages() : call.streams().out();
        }

        void run() {
            boolean leaves = log.question().ask() == Ask.FINISHED;
            while (!leaves) {
                ask(log.question());
                String line = read();
                if (line == null) {
                    return;
                }
                leaves = take(line) || log.question().ask() == Ask.FINISHED;
            }
        }

        private void ask(Question question) {
            int columns = call.streams().columns();
            StringBuilder text = new StringBuilder();
            if (!question.progress().equals(shown)) {
                shown = question.progress();
                text.append('\n');
                Wrap.indented(ChecklistText.progress(shown) + " (" + ChecklistText.done(shown) + ")", "", columns, text);
                ChecklistText.meters(log.meters()).forEach(meter -> Wrap.indented(meter, "  ", columns, text));
            }
            List<String> instructions = ChecklistText.instructions(question, log.view().plan());
            if (!instructions.equals(told)) {
                told = instructions;
                instructions.forEach(line -> Wrap.indented(line, "  ", columns, text));
            }
            out.print(text + ChecklistText.prompt(question, log.view().plan()) + "> ");
            out.flush();
        }

        private boolean take(String line) {
            try {
                LogReply reply = log.answer(line);
                if (!call.streams().interactive()) {
                    out.println();
                }
                tell(out, reply.said(), call.streams().columns());
                return reply.leaves();
            } catch (Refused refused) {
                if (!call.streams().interactive()) {
                    out.println();
                }
                out.print(ProblemText.of(refused.problems()));
                out.flush();
                return false;
            }
        }

        private String read() {
            try {
                return call.streams().in().readLine();
            } catch (IOException broken) {
                throw new UncheckedIOException("standard input cannot be read", broken);
            }
        }
    }
}
