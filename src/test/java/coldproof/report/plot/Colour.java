package coldproof.report.plot;

/** Colour as eyes see it, for the tests of palettes. */
public final class Colour {
    private Colour() {}

    /**
     * Contrast of two colours, 1 to 21: (L1 + 0.05) / (L2 + 0.05).
     *
     * @see "W3C, Web Content Accessibility Guidelines 2.2, definitions of contrast ratio and relative luminance"
     */
    public static double contrast(int one, int other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(int colour) {
        double[] rgb = linear(colour);
        return 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2];
    }

    /** sRGB to linear light, IEC 61966-2-1. */
    static double[] linear(int colour) {
        double[] rgb = new double[3];
        for (int i = 0; i < 3; i++) {
            double c = (colour >> 8 * (2 - i) & 0xff) / 255.0;
            rgb[i] = c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
        }
        return rgb;
    }

    /** Difference of two colours as an eye with this matrix sees them: Euclidean in CIE 1976 L*a*b*, white D65. */
    static double difference(int one, int other, double[][] eye) {
        double[] a = lab(times(eye, linear(one)));
        double[] b = lab(times(eye, linear(other)));
        return Math.sqrt(Math.pow(a[0] - b[0], 2) + Math.pow(a[1] - b[1], 2) + Math.pow(a[2] - b[2], 2));
    }

    private static double[] times(double[][] matrix, double[] vector) {
        double[] result = new double[3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                result[i] += matrix[i][j] * vector[j];
            }
            result[i] = Math.max(0, Math.min(1, result[i]));
        }
        return result;
    }

    /** Linear sRGB to XYZ (IEC 61966-2-1) to L*a*b* (CIE 15). */
    private static double[] lab(double[] rgb) {
        double x = bend((0.4124 * rgb[0] + 0.3576 * rgb[1] + 0.1805 * rgb[2]) / 0.9505);
        double y = bend(0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2]);
        double z = bend((0.0193 * rgb[0] + 0.1192 * rgb[1] + 0.9505 * rgb[2]) / 1.0891);
        return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
    }

    private static double bend(double t) {
        return t > 216.0 / 24389 ? Math.cbrt(t) : (24389.0 / 27 * t + 16) / 116;
    }
}
