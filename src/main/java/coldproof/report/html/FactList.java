package coldproof.report.html;

import coldproof.report.markup.Markup;
import coldproof.report.page.Block;
import coldproof.report.text.Fact;

/** Labelled lines; behind each rounded number stands the exact one, for whoever reads the page by program. */
final class FactList {
    private FactList() {}

    static void write(Block.Facts facts, Markup out) {
        if (facts.about().isEmpty()) {
            out.open("dl");
        } else {
            out.open("dl", "data-about", facts.about());
        }
        for (Fact fact : facts.facts()) {
            out.element("dt", fact.label()).open("dd");
            for (Fact.Span span : fact.spans()) {
                if (span.isNumber() && Double.isFinite(span.exact())) {
                    out.element("data", span.shown(), "data-key", span.key(), "value", Double.toString(span.exact()));
                } else {
                    out.text(span.shown());
                }
            }
            out.close("dd").newLine();
        }
        out.close("dl");
    }
}
