package coldproof.report.plot;

import coldproof.quantity.ConstantWord;
import coldproof.report.markup.Markup;
import java.util.List;

/** Paints the marks of a plot. */
final class MarkPainter {
    private static final double POINT = 4;
    private static final double SMALL_POINT = 2.4;
    private static final int MANY = 150; // points beyond which they are drawn small
    private final Coordinates at;
    private final Markup out;

    MarkPainter(Coordinates at, Markup out) {
        this.at = at;
        this.out = out;
    }

    void paint(Mark mark) {
        if (mark instanceof Mark.Points points) {
            points(points);
        } else if (mark instanceof Mark.Line line) {
            path(line(line.places()), "line " + ConstantWord.of(line.stroke()) + " s-" + line.ink().code());
        } else if (mark instanceof Mark.Reach reach) {
            reach(reach);
        } else if (mark instanceof Mark.Bar bar) {
            rectangle(at.x(bar.low()), at.y(bar.at() + bar.half()), at.x(bar.high()), at.y(bar.at() - bar.half()), "bar f-" + bar.ink().code());
        } else if (mark instanceof Mark.Band band) {
            band(band);
        } else if (mark instanceof Mark.Rule rule) {
            rule(rule);
        } else if (mark instanceof Mark.Ribbon ribbon) {
            ribbon(ribbon);
        }
    }

    private void points(Mark.Points points) {
        double size = points.places().size() > MANY ? SMALL_POINT : POINT;
        StringBuilder path = new StringBuilder();
        for (Mark.Place place : points.places()) {
            path.append(points.shape().path(at.x(place.x()), at.y(place.y()), size));
        }
        path(path.toString(), (points.shape().isOpen() ? "open s-" : "dot f-") + points.ink().code());
    }

    private String line(List<Mark.Place> places) {
        StringBuilder path = new StringBuilder();
        boolean broken = true;
        for (Mark.Place place : places) {
            boolean there = Double.isFinite(place.x()) && Double.isFinite(place.y());
            if (there) {
                path.append(broken ? 'M' : 'L').append(n(at.x(place.x()))).append(' ').append(n(at.y(place.y())));
            }
            broken = !there;
        }
        return path.toString();
    }

    private void reach(Mark.Reach reach) {
        boolean across = reach.along() == Mark.Along.X;
        boolean bold = reach.weight() == Mark.Weight.BOLD;
        double low = across ? at.x(reach.low()) : at.y(reach.low());
        double high = across ? at.x(reach.high()) : at.y(reach.high());
        double middle = across ? at.y(reach.at()) : at.x(reach.at());
        double cap = bold ? 7 : 5;
        String path = across
                ? "M" + n(low) + " " + n(middle) + "H" + n(high) + cap(low, middle, cap, true) + cap(high, middle, cap, true)
                : "M" + n(middle) + " " + n(low) + "V" + n(high) + cap(middle, low, cap, false) + cap(middle, high, cap, false);
        path(path, "line " + (bold ? "bold" : "plain") + " s-" + reach.ink().code());
        if (!Double.isNaN(reach.middle())) {
            double x = across ? at.x(reach.middle()) : middle;
            double y = across ? middle : at.y(reach.middle());
            path(Shape.DIAMOND.path(x, y, bold ? 6 : 4), "dot f-" + reach.ink().code());
        }
    }

    private static String cap(double x, double y, double half, boolean upright) {
        return upright ? "M" + n(x) + " " + n(y - half) + "V" + n(y + half) : "M" + n(x - half) + " " + n(y) + "H" + n(x + half);
    }

    private void band(Mark.Band band) {
        boolean upright = band.along() == Mark.Along.X;
        double from = upright ? at.x(band.low()) : at.y(band.high());
        double to = upright ? at.x(band.high()) : at.y(band.low());
        if (to <= from) {
            return;
        }
        rectangle(upright ? from : at.left(), upright ? at.top() : from, upright ? to : at.right(), upright ? at.bottom() : to, "band f-" + band.ink().code());
        if (!band.label().isEmpty()) {
            out.element("text", band.label(), "x", upright ? n((from + to) / 2) : n(at.left() + 5), "y", n(upright ? at.top() + 14 : from + 14),
                    "class", upright ? "middle" : "start");
        }
    }

    private void rectangle(double left, double top, double right, double bottom, String appearance) {
        out.open("rect", "x", n(left), "y", n(top), "width", n(right - left), "height", n(bottom - top), "class", appearance).close("rect");
    }

    private void rule(Mark.Rule rule) {
        double place = rule.along() == Mark.Along.X ? at.x(rule.value()) : at.y(rule.value());
        String path = rule.along() == Mark.Along.X ? "M" + n(place) + " " + n(at.top()) + "V" + n(at.bottom())
                : "M" + n(at.left()) + " " + n(place) + "H" + n(at.right());
        path(path, "line " + ConstantWord.of(rule.stroke()) + " s-" + rule.ink().code());
    }

    private void ribbon(Mark.Ribbon ribbon) {
        StringBuilder path = new StringBuilder();
        int size = ribbon.x().size();
        for (int i = 0; i < size; i++) {
            path.append(i == 0 ? 'M' : 'L').append(n(at.x(ribbon.x().get(i)))).append(' ').append(n(at.y(ribbon.high().get(i))));
        }
        for (int i = size - 1; i >= 0; i--) {
            path.append('L').append(n(at.x(ribbon.x().get(i)))).append(' ').append(n(at.y(ribbon.low().get(i))));
        }
        path(path.append(size == 0 ? "" : "Z").toString(), "band f-" + ribbon.ink().code());
    }

    private void path(String data, String appearance) {
        if (!data.isEmpty()) {
            out.open("path", "class", appearance, "d", data).close("path");
        }
    }

    private static String n(double number) {
        return Coordinates.number(number);
    }
}
