package coldproof.report.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The report on one study: the answer first, then what it rests on. */
public final class StudyPage {
    private StudyPage() {}

    /** The page of a study. */
    public static Page of(StudyContent content) {
        List<Section> sections = new ArrayList<>();
        sections.add(AnswerSection.of(content));
        if (!content.state().trials().isEmpty()) {
            sections.add(measured(content));
        }
        LimiterSection.of(content).ifPresent(sections::add);
        TraceSection.of(content).ifPresent(sections::add);
        sections.add(PlanSection.of(content));
        sections.add(deviations(content));
        sections.add(SafetySection.of(content));
        sections.add(TrialsSection.sessions(content));
        sections.add(TrialsSection.trials(content));
        LimiterSection.predictions(content).ifPresent(sections::add);
        sections.add(new Section("method", "How it was judged, in plain words", MethodWords.of(content).stream().<Block>map(Block.Prose::new).toList()));
        sections.add(made(content));
        return new Page(content.plan().title(), content.plan().device(), sections);
    }

    private static Section measured(StudyContent content) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Drawing(SessionPlot.of(content)));
        EffectPlot.of(content).map(Block.Drawing::new).ifPresent(blocks::add);
        blocks.add(new Block.Drawing(OrderPlot.of(content)));
        Optional<Block> power = PowerPlot.of(content).map(Block.Drawing::new);
        power.ifPresent(blocks::add);
        return new Section("measured", "What was measured", blocks);
    }

    private static Section deviations(StudyContent content) {
        Block block = content.deviations().isEmpty() ? new Block.Prose("None: the study was run as planned.") : new Block.Points(content.deviations());
        return new Section("deviations", "Deviations from the plan", List.of(block));
    }

    private static Section made(StudyContent content) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Prose("Made by coldproof " + content.made().version() + " from the files below. The same files give the same page, byte for byte; the digests "
                + "show whether a file at hand is the one that was read."));
        blocks.add(new Block.Grid("SHA-256 of the files read", List.of(Block.Column.words("file"), Block.Column.words("digest")),
                content.made().digests().stream().map(digest -> List.of(digest.file(), digest.sha256())).toList()));
        return new Section("made", "Made by, made from", blocks);
    }
}
