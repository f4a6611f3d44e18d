package coldproof.report.page;

import coldproof.report.text.Fact;
import coldproof.report.text.PlanText;
import java.util.ArrayList;
import java.util.List;

/** What was decided before the first trial. */
final class PlanSection {
    private PlanSection() {}

    static Section of(StudyContent content) {
        List<Block> blocks = new ArrayList<>();
        List<Fact> facts = new ArrayList<>(PlanText.facts(content.plan()));
        content.state().planDigest().ifPresent(digest -> facts.add(Fact.of("frozen", "with the digest " + digest)));
        blocks.add(new Block.Facts("", facts));
        content.planText().ifPresent(text -> {
            blocks.add(new Block.Prose(content.frozen() ? "The plan as it was frozen, word for word:" : "The plan file as it lies in the folder, not frozen:"));
            blocks.add(new Block.Verbatim(text));
        });
        content.state().amendments().forEach(amended -> blocks.add(new Block.Notice("AMENDED", "The plan was changed after it had been frozen: " + amended.event().reason())));
        return new Section("plan", content.frozen() ? "The plan, as frozen" : "The plan", blocks);
    }
}
