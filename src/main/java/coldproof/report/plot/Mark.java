package coldproof.report.plot;

import java.util.List;

/** Something drawn in a plot, in the numbers of its axes. */
public sealed interface Mark {
    /**
     * A place.
     *
     * @param x along the horizontal axis
     * @param y along the vertical axis
     */
    record Place(double x, double y) {}

    /**
     * Points of one kind.
     *
     * @param places where
     * @param ink colour
     * @param shape form
     */
    record Points(List<Place> places, Ink ink, Shape shape) implements Mark {
        /** Copies. */
        public Points {
            places = List.copyOf(places);
        }
    }

    /**
     * A line through places; it is broken where a coordinate is NaN.
     *
     * @param places where
     * @param ink colour
     * @param stroke how it is drawn
     */
    record Line(List<Place> places, Ink ink, Stroke stroke) implements Mark {
        /** Copies. */
        public Line {
            places = List.copyOf(places);
        }
    }

    /**
     * An interval with its middle.
     *
     * @param at place on the other axis
     * @param low end
     * @param middle the estimate; NaN for none
     * @param high end
     * @param along the axis it lies along
     * @param ink colour
     * @param weight how bold
     */
    record Reach(double at, double low, double middle, double high, Along along, Ink ink, Weight weight) implements Mark {}

    /**
     * A filled bar along the horizontal axis.
     *
     * @param at its middle on the vertical axis
     * @param low where it begins
     * @param high where it ends
     * @param half half of its height, on the vertical axis
     * @param ink colour
     */
    record Bar(double at, double low, double high, double half, Ink ink) implements Mark {}

    /**
     * A shaded stretch of an axis across the whole plot.
     *
     * @param along the axis
     * @param low end
     * @param high end
     * @param ink colour
     * @param label written in it; may be empty
     */
    record Band(Along along, double low, double high, Ink ink, String label) implements Mark {}

    /**
     * A straight line across the whole plot at one number.
     *
     * @param along the axis the number is on
     * @param value the number
     * @param ink colour
     * @param stroke how it is drawn
     */
    record Rule(Along along, double value, Ink ink, Stroke stroke) implements Mark {}

    /**
     * A shaded ribbon between two lines over the same places.
     *
     * @param x places along the horizontal axis
     * @param low lower line
     * @param high upper line
     * @param ink colour
     */
    record Ribbon(List<Double> x, List<Double> low, List<Double> high, Ink ink) implements Mark {
        /** Copies. */
        public Ribbon {
            x = List.copyOf(x);
            low = List.copyOf(low);
            high = List.copyOf(high);
        }
    }

    /** An axis. */
    enum Along {
        /** The horizontal one. */
        X,
        /** The vertical one. */
        Y
    }

    /** How a line is drawn. */
    enum Stroke {
        /** Unbroken. */
        PLAIN,
        /** Unbroken and fine, for many lines together. */
        FINE,
        /** Dashed. */
        DASHED,
        /** Dotted. */
        DOTTED,
        /** Dashes and dots in turn. */
        DASHED_DOTTED
    }

    /** How bold an interval is. */
    enum Weight {
        /** Fine. */
        FINE,
        /** Bold. */
        BOLD
    }
}
