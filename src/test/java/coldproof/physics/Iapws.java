package coldproof.physics;

/**
 * Saturation pressure by the formulations of the association for the properties of water and steam: an oracle independent of Magnus.
 *
 * <p>Water: SR1-86(1992), from 0.01 °C. Ice: R14-08. Supercooled water: Murphy and Koop 2005. All coefficients from memory;
 * PsychrometricsTest checks them at the published verification points.
 */
final class Iapws {
    private static final double[] WATER_A = {-7.85951783, 1.84408259, -11.7866497, 22.6807411, -15.9618719, 1.80122502};
    private static final double[] WATER_B = {1, 1.5, 3, 3.5, 4, 7.5};
    private static final double[] ICE_A = {-21.2144006, 27.3203819, -6.10598130};
    private static final double[] ICE_B = {0.00333333333, 1.20666667, 1.70333333};

    private Iapws() {}

    static double overWater(double celsius) {
        double kelvin = celsius + 273.15;
        if (kelvin < 273.16) {
            return supercooled(kelvin);
        }
        double tau = 1 - kelvin / 647.096;
        double sum = 0;
        for (int i = 0; i < WATER_A.length; i++) {
            sum += WATER_A[i] * Math.pow(tau, WATER_B[i]);
        }
        return 22.064e6 * Math.exp(647.096 / kelvin * sum);
    }

    static double overIce(double celsius) {
        double theta = (celsius + 273.15) / 273.16;
        double sum = 0;
        for (int i = 0; i < ICE_A.length; i++) {
            sum += ICE_A[i] * Math.pow(theta, ICE_B[i]);
        }
        return 611.657 * Math.exp(sum / theta);
    }

    private static double supercooled(double t) {
        return Math.exp(54.842763 - 6763.22 / t - 4.210 * Math.log(t) + 0.000367 * t
                + Math.tanh(0.0415 * (t - 218.8)) * (53.878 - 1331.22 / t - 9.44523 * Math.log(t) + 0.014025 * t));
    }

    /** The temperature at which water saturates at a pressure, by bisection. */
    static double dewPoint(double pascal) {
        return bisect(pascal, -60, 80, true);
    }

    /** The temperature at which ice saturates at a pressure, by bisection. */
    static double frostPoint(double pascal) {
        return bisect(pascal, -90, 0.01, false);
    }

    private static double bisect(double pascal, double from, double to, boolean water) {
        double low = from;
        double high = to;
        for (int i = 0; i < 100; i++) {
            double middle = (low + high) / 2;
            if ((water ? overWater(middle) : overIce(middle)) < pascal) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }
}
