package coldproof.report.plot;

import java.util.Locale;

/**
 * From the numbers of a plot to places on the drawing.
 *
 * @param plot whose axes
 * @param left of the frame, in units of the drawing
 * @param top of the frame
 * @param width of the frame
 * @param height of the frame
 */
record Coordinates(Plot plot, double left, double top, double width, double height) {
    double x(double value) {
        return left + width * (clamp(value, plot.x()) - plot.x().low()) / (plot.x().high() - plot.x().low());
    }

    double y(double value) {
        return top + height * (plot.y().high() - clamp(value, plot.y())) / (plot.y().high() - plot.y().low());
    }

    /** What lies far outside is drawn at the edge: an interval without an end runs to it. */
    private static double clamp(double value, Axis axis) {
        return Math.max(axis.low(), Math.min(axis.high(), value));
    }

    double right() {
        return left + width;
    }

    double bottom() {
        return top + height;
    }

    /** A coordinate with at most one decimal: a tenth of a unit cannot be seen. */
    static String number(double value) {
        String text = String.format(Locale.ROOT, "%.1f", value);
        String shorter = text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
        return shorter.equals("-0") ? "0" : shorter;
    }
}
