package coldproof.report.plot;

import coldproof.report.markup.Markup;

/** Draws the sign of a key, 34 by 18. */
public final class SvgKey {
    private SvgKey() {}

    /** Draws; the words beside it say what it means, so readers of the screen pass over it. */
    public static void draw(Plot.Key key, Markup out) {
        String stroke = " s-" + key.ink().code();
        String fill = " f-" + key.ink().code();
        out.open("svg", "class", "plot", "viewBox", "0 0 34 18", "aria-hidden", "true");
        switch (key.sign()) {
            case POINT -> path(out, (key.shape().isOpen() ? "open" + stroke : "dot" + fill), key.shape().path(17, 9, 5));
            case LINE -> path(out, "line plain" + stroke, "M2 9H32");
            case DASHED -> path(out, "line dashed" + stroke, "M2 9H32");
            case DOTTED -> path(out, "line dotted" + stroke, "M2 9H32");
            case DASHED_DOTTED -> path(out, "line dashed_dotted" + stroke, "M2 9H32");
            case BAND -> path(out, "band" + fill, "M2 2H32V16H2Z");
            case BAR -> path(out, "bar" + fill, "M2 4H32V14H2Z");
            case REACH -> {
                path(out, "line plain" + stroke, "M4 9H30M4 4V14M30 4V14");
                path(out, "dot" + fill, Shape.DIAMOND.path(17, 9, 4));
            }
        }
        out.close("svg");
    }

    private static void path(Markup out, String appearance, String data) {
        out.open("path", "class", appearance, "d", data).close("path");
    }
}
