package coldproof.report.plain;

import coldproof.report.page.Block;
import coldproof.report.page.Page;
import coldproof.report.page.Section;
import java.util.List;
import java.util.stream.Collectors;

/** A page as Markdown: CommonMark with pipe tables. Whatever a person wrote stands as they wrote it and means nothing to a reader of Markdown. */
public final class MarkdownPage {
    private final StringBuilder out = new StringBuilder();

    private MarkdownPage() {}

    /** The file's characters; the same page gives the same characters. */
    public static String of(Page page) {
        MarkdownPage text = new MarkdownPage();
        text.out.append("# ").append(Escape.text(page.title())).append('\n');
        if (!page.subtitle().isEmpty()) {
            text.out.append('\n').append(Escape.text(page.subtitle())).append('\n');
        }
        page.sections().forEach(text::section);
        return text.out.toString();
    }

    private void section(Section section) {
        out.append("\n## ").append(Escape.text(section.heading())).append('\n');
        section.blocks().forEach(block -> {
            out.append('\n');
            block(block);
        });
    }

    private void block(Block block) {
        if (block instanceof Block.Prose prose) {
            out.append(Escape.text(prose.text())).append('\n');
        } else if (block instanceof Block.Notice notice) {
            out.append("> **").append(Escape.text(notice.word())).append("**: ").append(Escape.text(notice.text())).append('\n');
        } else if (block instanceof Block.Answer answer) {
            out.append("**").append(Escape.text(answer.word())).append("**: ").append(Escape.text(answer.text())).append("\n\n").append(Escape.text(answer.small())).append('\n');
        } else if (block instanceof Block.Entry entry) {
            String title = Escape.text(entry.title());
            out.append("### ").append(entry.address().isEmpty() ? title : "[" + title + "](" + entry.address() + ")").append("\n\n**").append(Escape.text(entry.word())).append("**: ")
                    .append(Escape.text(entry.text())).append("\n\n").append(Escape.text(entry.small())).append('\n');
        } else if (block instanceof Block.Facts facts) {
            row(List.of("what", "value"));
            out.append("|---|---|\n");
            facts.facts().forEach(fact -> row(List.of(fact.label(), fact.text())));
        } else if (block instanceof Block.Grid grid) {
            out.append(Escape.text(grid.caption())).append(":\n\n");
            row(grid.columns().stream().map(Block.Column::head).toList());
            out.append(grid.columns().stream().map(column -> column.number() ? "---:" : "---").collect(Collectors.joining("|", "|", "|\n")));
            grid.rows().forEach(this::row);
        } else if (block instanceof Block.Drawing drawing) {
            out.append("**").append(Escape.text(drawing.plot().title())).append("**: ").append(Escape.text(drawing.plot().description())).append('\n');
        } else if (block instanceof Block.Verbatim verbatim) {
            verbatim(verbatim.text());
        } else if (block instanceof Block.Points points) {
            points.items().forEach(item -> out.append("- ").append(Escape.text(item)).append('\n'));
        }
    }

    private void row(List<String> cells) {
        out.append(cells.stream().map(cell -> cell.isEmpty() ? " " : " " + Escape.text(cell) + " ").collect(Collectors.joining("|", "|", "|\n")));
    }

    /** A fence longer than any run of backticks in the text cannot be closed by it (CommonMark 0.31, section 4.5). */
    private void verbatim(String text) {
        String fence = "`".repeat(Math.max(3, Escape.longestRun(text, '`') + 1));
        out.append(fence).append("text\n");
        text.lines().forEach(line -> out.append(Escape.harmless(line)).append('\n'));
        out.append(fence).append('\n');
    }
}
