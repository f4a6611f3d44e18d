package coldproof.report.html;

import coldproof.report.markup.Markup;
import coldproof.report.page.Block;
import coldproof.report.page.Page;
import coldproof.report.page.Section;
import java.util.List;
import java.util.regex.Pattern;

/** A page as one HTML file. */
public final class HtmlPage {
    /** Nothing is fetched and nothing runs, even if a browser is asked to. */
    private static final String POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";
    /** A word that a narrow column cannot hold: it may be broken anywhere. */
    private static final Pattern LONG_WORD = Pattern.compile("\\S{25}");
    private final Markup out = new Markup();
    private int figures;
    private int tables;

    private HtmlPage() {}

    /** The file's characters; the same page gives the same characters. */
    public static String of(Page page) {
        return new HtmlPage().write(page);
    }

    private String write(Page page) {
        out.doctype().open("html", "lang", "en").newLine().open("head");
        out.open("meta", "charset", "utf-8").open("meta", "http-equiv", "Content-Security-Policy", "content", POLICY);
        out.open("meta", "name", "viewport", "content", "width=device-width, initial-scale=1").open("meta", "name", "referrer", "content", "no-referrer");
        out.element("title", page.title()).newLine().style(Appearance.rules()).close("head").newLine().open("body").newLine();
        out.open("header").element("h1", page.title());
        if (!page.subtitle().isEmpty()) {
            out.element("p", page.subtitle(), "class", "under");
        }
        out.close("header").newLine().open("main").newLine();
        for (int i = 0; i < page.sections().size(); i++) {
            section(page.sections().get(i));
            if (i == 0) {
                contents(page.sections());
            }
        }
        out.close("main").newLine().close("body").close("html").newLine();
        return out.document();
    }

    private void contents(List<Section> sections) {
        out.open("nav", "aria-label", "parts of this page").open("ul");
        sections.stream().skip(1).forEach(section -> out.open("li").element("a", section.heading(), "href", "#" + section.id()).close("li"));
        out.close("ul").close("nav").newLine();
    }

    private void section(Section section) {
        out.open("section", "id", section.id()).element("h2", section.heading()).newLine();
        List<Block> blocks = section.blocks();
        for (int i = 0; i < blocks.size(); i++) {
            boolean drawing = blocks.get(i) instanceof Block.Drawing;
            if (drawing && (i == 0 || !(blocks.get(i - 1) instanceof Block.Drawing))) {
                out.open("div", "class", "figures").newLine();
            }
            block(blocks.get(i));
            out.newLine();
            if (drawing && (i + 1 == blocks.size() || !(blocks.get(i + 1) instanceof Block.Drawing))) {
                out.close("div").newLine();
            }
        }
        out.close("section").newLine();
    }

    private void block(Block block) {
        if (block instanceof Block.Prose prose) {
            out.element("p", prose.text());
        } else if (block instanceof Block.Notice notice) {
            out.open("div", "class", "notice", "role", "note").element("strong", notice.word()).text(notice.text()).close("div");
        } else if (block instanceof Block.Answer answer) {
            answer(answer);
        } else if (block instanceof Block.Entry entry) {
            entry(entry);
        } else if (block instanceof Block.Facts facts) {
            FactList.write(facts, out);
        } else if (block instanceof Block.Grid grid) {
            grid(grid);
        } else if (block instanceof Block.Drawing drawing) {
            figures++;
            FigureWriter.write(drawing.plot(), "figure-" + figures, out);
        } else if (block instanceof Block.Verbatim verbatim) {
            out.open("pre").lines(verbatim.text()).close("pre");
        } else if (block instanceof Block.Points points) {
            out.open("ul");
            points.items().forEach(item -> out.element("li", item));
            out.close("ul");
        }
    }

    private void answer(Block.Answer answer) {
        out.open("div", "class", "answer").element("p", answer.word(), "class", "word").element("p", answer.text(), "class", "said");
        if (!answer.small().isEmpty()) {
            out.element("p", answer.small(), "class", "small");
        }
        out.close("div");
    }

    private void entry(Block.Entry entry) {
        out.open("div", "class", "answer").open("h3");
        if (entry.address().isEmpty()) {
            out.text(entry.title());
        } else {
            out.element("a", entry.title(), "href", entry.address());
        }
        out.close("h3").element("p", entry.word(), "class", "word").element("p", entry.text(), "class", "said");
        if (!entry.small().isEmpty()) {
            out.element("p", entry.small(), "class", "small");
        }
        out.close("div");
    }

    private void grid(Block.Grid grid) {
        tables++;
        String caption = "table-" + tables;
        out.element("p", grid.caption(), "class", "caption", "id", caption).open("div", "class", "wide", "tabindex", "0", "role", "region", "aria-labelledby", caption);
        out.open("table", "aria-labelledby", caption).open("thead").open("tr");
        for (Block.Column column : grid.columns()) {
            if (column.number()) {
                out.element("th", column.head(), "scope", "col", "class", "number");
            } else {
                out.element("th", column.head(), "scope", "col");
            }
        }
        out.close("tr").close("thead").newLine().open("tbody").newLine();
        for (List<String> row : grid.rows()) {
            out.open("tr");
            for (int i = 0; i < row.size(); i++) {
                String kind = grid.columns().get(i).number() ? "number" : LONG_WORD.matcher(row.get(i)).find() ? "long" : "";
                if (kind.isEmpty()) {
                    out.element("td", row.get(i));
                } else {
                    out.element("td", row.get(i), "class", kind);
                }
            }
            out.close("tr").newLine();
        }
        out.close("tbody").close("table").close("div");
    }
}
