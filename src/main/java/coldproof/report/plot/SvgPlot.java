package coldproof.report.plot;

import coldproof.report.markup.Markup;
import java.util.List;
import java.util.stream.IntStream;

/** Draws a plot into a page. Colours come from the page's rules of appearance (see {@link PlotRules}); without them it is black on white. */
public final class SvgPlot {
    /** Width of the drawing, in its own units; letters are 13 high, so that they stay legible on a phone. */
    public static final int WIDTH = 420;
    private static final double LETTER = 6.9; // usual width of a letter 13 high, in units of the drawing
    private static final double WIDE_LETTER = 8.2; // digits with a minus and a percent sign
    private static final double TOP = 12;
    private static final double RIGHT = 14;
    private static final double BELOW = 44;
    private final Plot plot;
    private final Markup out;
    private final Coordinates at;

    private SvgPlot(Plot plot, Markup out) {
        this.plot = plot;
        this.out = out;
        double left = 28 + WIDE_LETTER * plot.y().marks().stream().mapToInt(mark -> mark.label().length()).max().orElse(0);
        this.at = new Coordinates(plot, left, TOP, WIDTH - left - RIGHT, plot.height() - TOP - BELOW);
    }

    /**
     * Draws.
     *
     * @param plot what
     * @param id a name for it that is unique in the page
     * @param out where
     */
    public static void draw(Plot plot, String id, Markup out) {
        new SvgPlot(plot, out).draw(id);
    }

    private void draw(String id) {
        out.open("svg", "class", "plot", "viewBox", "0 0 " + WIDTH + " " + plot.height(), "role", "img", "aria-labelledby", id + "-title " + id + "-words");
        out.element("title", plot.title(), "id", id + "-title");
        out.element("desc", plot.description(), "id", id + "-words");
        axes();
        MarkPainter painter = new MarkPainter(at, out);
        plot.marks().forEach(painter::paint);
        out.open("path", "class", "frame", "d", "M" + n(at.left()) + " " + n(at.top()) + "V" + n(at.bottom()) + "H" + n(at.right())).close("path");
        out.close("svg");
    }

    private void axes() {
        for (Axis.Mark mark : plot.y().marks()) {
            double y = at.y(mark.value());
            out.open("path", "class", "grid", "d", "M" + n(at.left()) + " " + n(y) + "H" + n(at.right())).close("path");
            out.element("text", mark.label(), "x", n(at.left() - 5), "y", n(y + 4.5), "class", "end");
        }
        for (Axis.Mark mark : spaced(plot.x().marks())) {
            double x = at.x(mark.value());
            out.open("path", "class", "grid", "d", "M" + n(x) + " " + n(at.bottom()) + "v5").close("path");
            out.element("text", mark.label(), "x", n(middleOf(mark)), "y", n(at.bottom() + 18), "class", "middle");
        }
        out.element("text", fitted(plot.x().title(), WIDTH - 20), "x", n((at.left() + at.right()) / 2), "y", n(plot.height() - 7), "class", "middle what");
        String title = fitted(plot.y().title(), at.height() + 30);
        if (!title.isEmpty()) {
            double y = (at.top() + at.bottom()) / 2;
            out.element("text", title, "transform", "translate(13 " + n(y) + ") rotate(-90)", "class", "middle what");
        }
    }

    /** Where a label below the frame has its middle: at its mark, or further in where it would be cut off. */
    private double middleOf(Axis.Mark mark) {
        double half = LETTER * mark.label().length() / 2;
        return Math.max(half, Math.min(WIDTH - half, at.x(mark.value())));
    }

    /** Marks whose labels do not run into each other: all, or every second, third, ... */
    private List<Axis.Mark> spaced(List<Axis.Mark> marks) {
        for (int every = 1; every < marks.size(); every++) {
            int step = every;
            List<Axis.Mark> kept = IntStream.range(0, marks.size()).filter(i -> i % step == 0).mapToObj(marks::get).toList();
            if (fits(kept)) {
                return kept;
            }
        }
        return marks.isEmpty() ? marks : List.of(marks.get(0));
    }

    private boolean fits(List<Axis.Mark> marks) {
        for (int i = 1; i < marks.size(); i++) {
            double room = middleOf(marks.get(i)) - middleOf(marks.get(i - 1));
            if (room < LETTER * (marks.get(i).label().length() + marks.get(i - 1).label().length()) / 2 + 8) {
                return false;
            }
        }
        return true;
    }

    private static String fitted(String text, double room) {
        int most = (int) (room / LETTER);
        int length = text.codePointCount(0, text.length());
        return length <= most ? text : text.substring(0, text.offsetByCodePoints(0, Math.max(1, most - 1))) + "\u2026";
    }

    private static String n(double number) {
        return Coordinates.number(number);
    }
}
