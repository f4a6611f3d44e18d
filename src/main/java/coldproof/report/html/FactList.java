package coldproof.report.html;

import coldproof.report.markup.Markup;
import coldproof.report.text.Fact;
import java.util.List;

/** Labelled lines; behind each rounded number stands the exact one, for whoever reads the page by program. */
final class FactList {
    private FactList() {}

    static void write(List<Fact> facts, Markup out) {
        out.open("dl");
        for (Fact fact : facts) {
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
