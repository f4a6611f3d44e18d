package coldproof.report.plot;

import java.util.List;

/**
 * A plot.
 *
 * @param title what it shows, in a few words
 * @param description what a person who cannot see it should know, in sentences with its main numbers
 * @param x horizontal axis
 * @param y vertical axis
 * @param marks what is drawn, the first at the back
 * @param keys what the signs mean
 * @param height of the drawing; its width is {@link SvgPlot#WIDTH}
 */
public record Plot(String title, String description, Axis x, Axis y, List<Mark> marks, List<Key> keys, int height) {
    /** The usual height. */
    public static final int USUAL_HEIGHT = 300;

    /** Copies. */
    public Plot {
        marks = List.copyOf(marks);
        keys = List.copyOf(keys);
    }

    /**
     * A line of the legend.
     *
     * @param sign what is drawn
     * @param ink in which colour
     * @param shape of points; counts for {@code POINT} alone
     * @param text what it means
     */
    public record Key(Sign sign, Ink ink, Shape shape, String text) {
        /** A key for points. */
        public static Key point(Ink ink, Shape shape, String text) {
            return new Key(Sign.POINT, ink, shape, text);
        }

        /** A key for something else. */
        public static Key of(Sign sign, Ink ink, String text) {
            return new Key(sign, ink, Shape.DISC, text);
        }
    }

    /** What a key shows. */
    public enum Sign {
        /** A point. */
        POINT,
        /** An unbroken line. */
        LINE,
        /** A dashed line. */
        DASHED,
        /** A dotted line. */
        DOTTED,
        /** A line of dashes and dots. */
        DASHED_DOTTED,
        /** A shaded stretch. */
        BAND,
        /** A filled bar. */
        BAR,
        /** An interval with its ends. */
        REACH
    }
}
