package coldproof.report.page;

import coldproof.reason.verdict.Check;
import coldproof.reason.verdict.Compared;
import coldproof.reason.verdict.Comparisons;
import coldproof.reason.verdict.LookReport;
import coldproof.reason.verdict.Question;
import coldproof.reason.verdict.Verdict;
import coldproof.report.page.Block.Column;
import coldproof.report.text.ComparisonsText;
import coldproof.report.text.Figures;
import coldproof.report.text.LooksText;
import coldproof.report.text.VerdictFacts;
import coldproof.report.text.VerdictText;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The answer: what must not be missed, the verdict in a sentence, then its numbers. */
final class AnswerSection {
    private final StudyContent content;
    private final List<Block> blocks = new ArrayList<>();

    private AnswerSection(StudyContent content) {
        this.content = content;
    }

    static Section of(StudyContent content) {
        AnswerSection section = new AnswerSection(content);
        section.notices();
        if (content.answers().size() == 1) {
            section.answer(content.answers().get(0));
        } else {
            section.together();
        }
        content.answers().forEach(section::numbers);
        content.state().looks().forEach(look -> section.blocks.add(new Block.Prose(LooksText.recorded(look))));
        return new Section("answer", "The answer", section.blocks);
    }

    private void notices() {
        content.state().simulated().ifPresent(text -> blocks.add(new Block.Notice("SIMULATED DATA", text)));
        if (!content.journalProblems().isEmpty()) {
            blocks.add(new Block.Notice("THE JOURNAL IS DAMAGED", "What can be read was read: " + String.join("; ", content.journalProblems()) + "."));
        }
        if (!content.frozen()) {
            blocks.add(new Block.Notice("NOT FROZEN", "The plan was not fixed before the trials, so what is written here shows less than a verdict under a rule fixed beforehand."));
        }
    }

    private void answer(Compared one) {
        blocks.add(new Block.Answer(one.verdict().decision().words(), VerdictText.sentence(one.question(), one.verdict()), claim(one.question(), one.verdict())));
        String settling = VerdictText.settling(one.verdict());
        if (!settling.isEmpty()) {
            blocks.add(new Block.Prose(settling));
        }
    }

    private static String claim(Question question, Verdict verdict) {
        return "Claim: " + question.claim().word() + ". Verdict: " + verdict.word().words() + ". A change of " + Figures.given(question.mattersPercent()) + " matters.";
    }

    /** Several changes: the decision for all of them, a table, then a sentence for each. */
    private void together() {
        List<Compared> all = content.answers();
        Compared deciding = Comparisons.deciding(all);
        blocks.add(new Block.Answer(deciding.verdict().decision().words(), VerdictText.sentence(deciding.question(), deciding.verdict()),
                all.size() + " changes of " + deciding.question().factor() + " were judged together; the study passes when every change does, and this one decides. "
                        + claim(deciding.question(), deciding.verdict())));
        blocks.add(new Block.Grid("All changes; intervals and adjusted p values hold for all of them at once (" + deciding.adjustment() + ")",
                List.of(Column.words("change"), Column.numbers("estimate"), Column.numbers("from"), Column.numbers("to"), Column.numbers("adjusted p"), Column.words("verdict")),
                all.stream().map(one -> Arrays.asList(ComparisonsText.cells(one))).toList()));
    }

    private void numbers(Compared one) {
        if (content.answers().size() > 1) {
            blocks.add(new Block.Prose(VerdictText.sentence(one.question(), one.verdict()) + " " + VerdictText.settling(one.verdict())));
        }
        blocks.add(new Block.Facts(one.question().against(), VerdictFacts.of(one.question(), one.verdict())));
        one.looks().ifPresent(this::looks);
        checks(one.verdict().checks());
    }

    private void looks(LookReport report) {
        if (!report.taken().isEmpty()) {
            blocks.add(new Block.Grid("Looks, each held against its own bound, so that all together keep the false alarm", List.of(Column.numbers("look"),
                    Column.numbers(report.unitWord() + "s"), Column.numbers("information"), Column.numbers("t"), Column.numbers("bound"), Column.numbers("p needed"),
                    Column.numbers("spent"), Column.words("says")), report.taken().stream().map(look -> Arrays.asList(LooksText.cells(look))).toList()));
        }
        blocks.add(new Block.Prose(report.taken().size() + " of " + report.planned() + " looks were taken. " + LooksText.words(report)));
    }

    private void checks(List<Check> checks) {
        if (!checks.isEmpty()) {
            blocks.add(new Block.Grid("Checks: they warn, they never drop a trial", List.of(Column.words(""), Column.words("check"), Column.words("what was found")),
                    checks.stream().map(check -> List.of(check.warns() ? "look" : "fine", check.name(), check.text())).toList()));
        }
    }
}
