package coldproof.report.page;

import coldproof.plan.Claim;
import coldproof.quantity.LogRatio;
import coldproof.reason.sizing.SizingAnswer;
import coldproof.reason.sizing.Warning;
import coldproof.report.text.Fact;
import coldproof.report.text.Figures;
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
        sight(content.sizing(), facts);
        blocks.add(new Block.Facts("", facts));
        if (!content.sizing().warnings().isEmpty()) {
            blocks.add(new Block.Prose("What was known of its weak sides beforehand:"));
            blocks.add(new Block.Points(content.sizing().warnings().stream().map(Warning::text).toList()));
        }
        content.planText().ifPresent(text -> {
            blocks.add(new Block.Prose(content.frozen() ? "The plan as it was frozen, word for word:" : "The plan file as it lies in the folder, not frozen:"));
            blocks.add(new Block.Verbatim(text));
        });
        content.state().amendments().forEach(amended -> blocks.add(new Block.Notice("AMENDED", "The plan was changed after it had been frozen: " + amended.event().reason())));
        return new Section("plan", content.frozen() ? "The plan, as frozen" : "The plan", blocks);
    }

    /** What the plan could see, and the time it takes. */
    private static void sight(SizingAnswer sizing, List<Fact> facts) {
        sizing.size().filter(size -> Double.isFinite(size.power())).ifPresent(size -> {
            String what = size.claim() == Claim.GAIN ? "a change of " + Figures.given(sizing.mattersPercent()) + " is found" : "sameness is shown when nothing changed";
            facts.add(Fact.of("power", what + " with a chance of " + Figures.share(size.power()) + "; wanted " + Figures.share(sizing.wantedPower())));
            size.smallestDetectableLog().ifPresent(log -> facts.add(Fact.of("sees", Figures.change(LogRatio.toPercent(log)) + " with a chance of " + Figures.share(sizing.wantedPower()))));
        });
        String time = PlanText.time(sizing.minutes().total(), sizing.minutes().outdoors());
        if (!time.isEmpty()) {
            facts.add(Fact.of("time", time));
        }
    }
}
