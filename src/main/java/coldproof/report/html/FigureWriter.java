package coldproof.report.html;

import coldproof.report.markup.Markup;
import coldproof.report.plot.Plot;
import coldproof.report.plot.SvgKey;
import coldproof.report.plot.SvgPlot;

/** A plot with its title, its legend and its description. */
final class FigureWriter {
    private FigureWriter() {}

    static void write(Plot plot, String id, Markup out) {
        out.open("figure").open("figcaption").element("b", plot.title()).close("figcaption").newLine();
        SvgPlot.draw(plot, id, out);
        out.newLine();
        if (!plot.keys().isEmpty()) {
            out.open("ul", "class", "keys");
            for (Plot.Key key : plot.keys()) {
                out.open("li");
                SvgKey.draw(key, out);
                out.open("span").text(key.text()).close("span").close("li");
            }
            out.close("ul").newLine();
        }
        out.element("p", plot.description(), "class", "words").close("figure");
    }
}
