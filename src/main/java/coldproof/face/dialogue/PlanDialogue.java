package coldproof.face.dialogue;

import coldproof.job.GuideStep;
import coldproof.job.PlanGuide;
import coldproof.job.PlanJob;
import coldproof.plan.Plan;
import coldproof.quantity.LogRatio;
import coldproof.quantity.Refused;
import coldproof.reason.sizing.Size;
import coldproof.reason.sizing.SizingAnswer;
import coldproof.report.text.Figures;
import coldproof.report.text.Harmless;
import coldproof.report.text.PlanText;
import coldproof.report.text.ProblemText;
import coldproof.report.text.TextTable;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** The guided plan by whole lines: a question, what it would mean, an answer, one step back at any time. */
public final class PlanDialogue {
    private final Lines lines;
    private final PlanGuide guide = new PlanGuide();

    private PlanDialogue(Lines lines) {
        this.lines = lines;
    }

    /**
     * Asks until the plan is complete and writes it.
     *
     * @return the file written; empty when no more lines came
     * @throws Refused if it cannot be written
     */
    public static Optional<Path> run(Path study, Lines lines) {
        PlanJob.refuseIfThere(study);
        PlanDialogue dialogue = new PlanDialogue(lines);
        dialogue.say("A plan in a few questions. Enter alone takes what stands in brackets; back goes one step back.");
        return dialogue.asked() ? Optional.of(PlanJob.create(study, PlanJob.text(dialogue.guide.plan().orElseThrow()))) : Optional.empty();
    }

    private boolean asked() {
        while (guide.step().isPresent()) {
            GuideStep step = guide.step().get();
            lines.out().println();
            say(step.question());
            if (step == GuideStep.SIZE) {
                table();
            }
            if (step == GuideStep.WRITE) {
                summary();
            }
            String usual = guide.usual();
            Optional<String> line = lines.ask(step.prompt() + (usual.isEmpty() ? "" : " [" + Harmless.line(usual) + "]") + "> ");
            if (line.isEmpty()) {
                return false;
            }
            take(line.get());
        }
        return true;
    }

    private void take(String line) {
        try {
            guide.answer(line);
            guide.sizing().ifPresent(this::effect);
        } catch (Refused refused) {
            lines.out().print(ProblemText.of(refused.problems()));
        }
        lines.out().flush();
    }

    /** What the answers so far mean: runs, time, energy, power. */
    private void effect(SizingAnswer answer) {
        Plan plan = guide.plan().orElseThrow();
        StringBuilder text = new StringBuilder("So far: ").append(PlanText.layout(plan.layout())).append(". ");
        String time = PlanText.time(answer.minutes().total(), answer.minutes().outdoors());
        text.append(time).append(time.isEmpty() ? "" : " ");
        guide.wattHours().ifPresent(energy -> text.append("Energy of the runs ").append(Figures.fixed(energy, 0)).append(" Wh. "));
        answer.size().ifPresent(size -> text.append("A change of ").append(Figures.given(plan.mattersPercent())).append(" is decided with ")
                .append(Figures.share(size.power())).append(" power."));
        say(Harmless.line(text.toString()));
    }

    private void table() {
        boolean sessions = guide.comparesSessions();
        TextTable table = new TextTable(sessions ? ">sittings each" : ">runs each", sessions ? ">runs in each" : ">in a row", ">runs", ">power", ">sees from",
                ">time", ">outdoors");
        for (PlanGuide.Choice choice : guide.choices()) {
            SizingAnswer answer = choice.answer();
            table.row(Integer.toString(choice.perLevel()), Integer.toString(choice.trials()), Integer.toString(choice.runs()),
                    answer.size().map(size -> Figures.share(size.power())).orElse("-"), answer.size().map(PlanDialogue::smallest).orElse("-"),
                    answer.minutes().total().isPresent() ? Figures.minutes(answer.minutes().total().getAsDouble()) : "-",
                    answer.minutes().outdoors().isPresent() ? Figures.minutes(answer.minutes().outdoors().getAsDouble()) : "-");
        }
        String text = table.text("");
        boolean fits = text.lines().mapToInt(String::length).max().orElse(0) <= lines.columns();
        lines.out().print(fits ? text : narrow());
    }

    private String narrow() {
        TextTable table = new TextTable(">size", ">runs", ">power", ">time", ">outdoors");
        for (PlanGuide.Choice choice : guide.choices()) {
            SizingAnswer answer = choice.answer();
            table.row(choice.perLevel() + (guide.comparesSessions() ? " x " + choice.trials() : ""), Integer.toString(choice.runs()),
                    answer.size().map(size -> Figures.share(size.power())).orElse("-"),
                    answer.minutes().total().isPresent() ? Figures.minutes(answer.minutes().total().getAsDouble()) : "-",
                    answer.minutes().outdoors().isPresent() ? Figures.minutes(answer.minutes().outdoors().getAsDouble()) : "-");
        }
        return table.text("");
    }

    private static String smallest(Size size) {
        return size.smallestDetectableLog().isPresent() ? Figures.percent(LogRatio.toPercent(size.smallestDetectableLog().getAsDouble()))
                : size.smallestMarginLog().isPresent() ? Figures.percent(LogRatio.toPercent(size.smallestMarginLog().getAsDouble())) : "-";
    }

    private void summary() {
        lines.out().println();
        lines.out().print(PlanJob.text(guide.plan().orElseThrow()).lines().map(Harmless::line).map(line -> "  " + line + "\n").reduce("", String::concat));
    }

    private void say(String sentence) {
        LogDialogue.tell(lines, List.of(sentence));
    }
}
