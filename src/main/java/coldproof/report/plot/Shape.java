package coldproof.report.plot;

import java.util.Locale;

/** What a point looks like, so that levels are told apart without colour. */
public enum Shape {
    /** A filled circle. */
    DISC,
    /** A filled triangle. */
    TRIANGLE,
    /** A filled square. */
    SQUARE,
    /** A filled diamond. */
    DIAMOND,
    /** An open circle. */
    RING,
    /** Two crossed strokes. */
    CROSS;

    /** The shape of the n-th level, first is 0. */
    public static Shape ofLevel(int n) {
        return values()[n % values().length];
    }

    /** The outline around a place, as path data; {@code size} is about its radius. */
    String path(double x, double y, double size) {
        return switch (this) {
            case DISC, RING -> circle(x, y, size);
            case TRIANGLE -> polygon(x, y - 1.2 * size, x + 1.1 * size, y + 0.8 * size, x - 1.1 * size, y + 0.8 * size);
            case SQUARE -> polygon(x - 0.9 * size, y - 0.9 * size, x + 0.9 * size, y - 0.9 * size, x + 0.9 * size, y + 0.9 * size, x - 0.9 * size, y + 0.9 * size);
            case DIAMOND -> polygon(x, y - 1.3 * size, x + 1.1 * size, y, x, y + 1.3 * size, x - 1.1 * size, y);
            case CROSS -> String.format(Locale.ROOT, "M%s %sL%s %sM%s %sL%s %s", n(x - size), n(y - size), n(x + size), n(y + size), n(x - size), n(y + size),
                    n(x + size), n(y - size));
        };
    }

    /** Whether only its outline is drawn. */
    boolean isOpen() {
        return this == RING || this == CROSS;
    }

    private static String circle(double x, double y, double radius) {
        return String.format(Locale.ROOT, "M%s %sa%s %s 0 1 0 %s 0a%s %s 0 1 0 %s 0Z", n(x - radius), n(y), n(radius), n(radius), n(2 * radius), n(radius), n(radius),
                n(-2 * radius));
    }

    private static String polygon(double... corners) {
        StringBuilder path = new StringBuilder();
        for (int i = 0; i < corners.length; i += 2) {
            path.append(i == 0 ? 'M' : 'L').append(n(corners[i])).append(' ').append(n(corners[i + 1]));
        }
        return path.append('Z').toString();
    }

    private static String n(double number) {
        return Coordinates.number(number);
    }
}
