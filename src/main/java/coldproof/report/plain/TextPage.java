package coldproof.report.plain;

import coldproof.report.page.Block;
import coldproof.report.page.Page;
import coldproof.report.page.Section;
import coldproof.report.text.Fact;
import coldproof.report.text.Harmless;
import coldproof.report.text.Wrap;
import java.util.List;

/** A page as plain text in lines of at most 80 characters; only words longer than a line are longer. */
public final class TextPage {
    private static final int COLUMNS = 80;
    private final StringBuilder out = new StringBuilder();

    private TextPage() {}

    /** The file's characters; the same page gives the same characters. */
    public static String of(Page page) {
        TextPage text = new TextPage();
        text.wrapped(page.title(), "");
        text.wrapped(page.subtitle(), "");
        page.sections().forEach(text::section);
        return text.out.toString();
    }

    private void wrapped(String text, String indent) {
        if (text.isEmpty()) {
            return;
        }
        Wrap.indented(Harmless.line(text), indent, COLUMNS, out);
    }

    private void section(Section section) {
        String heading = Harmless.line(section.heading());
        out.append('\n').append(heading).append('\n').append("=".repeat(heading.codePointCount(0, heading.length()))).append('\n');
        section.blocks().forEach(block -> {
            out.append('\n');
            block(block);
        });
    }

    private void block(Block block) {
        if (block instanceof Block.Prose prose) {
            wrapped(prose.text(), "");
        } else if (block instanceof Block.Notice notice) {
            wrapped("!!! " + notice.word() + ": " + notice.text(), "");
        } else if (block instanceof Block.Answer answer) {
            wrapped(answer.word(), "");
            wrapped(answer.text(), "");
            wrapped(answer.small(), "");
        } else if (block instanceof Block.Entry entry) {
            wrapped(entry.title(), "");
            wrapped(entry.word(), "  ");
            wrapped(entry.text(), "  ");
            wrapped(entry.small(), "  ");
        } else if (block instanceof Block.Facts facts) {
            facts(facts.facts());
        } else if (block instanceof Block.Grid grid) {
            wrapped(grid.caption(), "");
            out.append(PlainGrid.of(grid, COLUMNS));
        } else if (block instanceof Block.Drawing drawing) {
            wrapped(drawing.plot().title() + ". " + drawing.plot().description(), "");
        } else if (block instanceof Block.Verbatim verbatim) {
            verbatim.text().lines().forEach(line -> out.append("    ").append(Harmless.line(line)).append('\n'));
        } else if (block instanceof Block.Points points) {
            points.items().forEach(item -> Wrap.hanging("- ", Harmless.line(item), COLUMNS, out));
        }
    }

    private void facts(List<Fact> facts) {
        int width = 2 + facts.stream().mapToInt(fact -> fact.label().length()).max().orElse(0);
        facts.forEach(fact -> Wrap.labelled(fact.label(), width, Harmless.line(fact.text()), COLUMNS, out));
    }
}
