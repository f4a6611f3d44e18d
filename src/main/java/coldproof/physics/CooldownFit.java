package coldproof.physics;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A time constant measured from a cool-down (or warm-up) of an idle device: {@code T = S + A exp(-t / tau)} fitted to the points between
 * 10 and 90 % of the observed span.
 *
 * <p>For a given tau the other parameters are linear, so only tau is searched (variable projection). The standard error comes from the
 * linearised model, widened for the lag-one autocorrelation r of the residuals by {@code sqrt((1 + r) / (1 - r))}; the interval is
 * {@code tau exp(-+2 se / tau)} (coverage factor 2). When the late half of the window is slower than the whole, a second, slower body
 * is seen and the late value is used, because the coldest part is the one that matters.
 *
 * @param timeConstant the result with its interval, marked as measured
 * @param surroundingsCelsius temperature that it tends to, °C: given or fitted
 * @param rSquared share of the variation explained by the fit used, at most 1
 * @param spanKelvins observed span of the whole record, K
 * @param points points in the window
 * @param slowerBodySeen whether the late half was slower and its value is used
 */
public record CooldownFit(TimeConstant timeConstant, double surroundingsCelsius, double rSquared, double spanKelvins, int points,
        boolean slowerBodySeen) {
    /** Smallest R² at which a fit may be relied on (common practice). */
    public static final double SMALLEST_R_SQUARED = 0.99;
    /** Smallest span in K at which a fit may be relied on (common practice). */
    public static final double SMALLEST_SPAN = 5;
    /** Fewest points in the window. */
    public static final int FEWEST_POINTS = 8;

    private static final double SLOWER_FACTOR = 1.15; // below this a late value is not worth a second mode (our judgement)

    /** Why a record gives no time constant. */
    public enum Unusable {
        /** Fewer points between 10 and 90 % of the span than needed. */
        TOO_FEW_POINTS("too few readings between 10 and 90 % of the change"),
        /** The temperature moved by less than 5 K. */
        SPAN_TOO_SMALL("the temperature moved by less than 5 K"),
        /** The curve is no exponential: R² below 0.99. */
        NO_EXPONENTIAL("the curve is no exponential approach (R² below 0.99): was the device idle and the air steady?"),
        /** The record ends before the curve bends. */
        TOO_SHORT("the record is too short to see the curve bend: log on until it is nearly level");

        private final String sentence;

        Unusable(String sentence) {
            this.sentence = sentence;
        }

        /** The reason for a reader. */
        public String sentence() {
            return sentence;
        }
    }

    /** Either a fit or the reason why there is none. */
    public record Outcome(Optional<CooldownFit> fit, Optional<Unusable> unusable) {
        private static Outcome of(Unusable reason) {
            return new Outcome(Optional.empty(), Optional.of(reason));
        }
    }

    /**
     * Fits one sensor. Use the slowest internal one: battery or drive.
     *
     * @param seconds times, strictly increasing, finite
     * @param celsius readings, same length, finite
     * @param surroundings temperature of the air around in °C if it was measured and steady; else it is fitted
     * @throws IllegalArgumentException if the arrays differ in length, hold NaN, or the times do not increase
     */
    public static Outcome fit(double[] seconds, double[] celsius, OptionalDouble surroundings) {
        check(seconds, celsius);
        if (seconds.length < FEWEST_POINTS) {
            return Outcome.of(Unusable.TOO_FEW_POINTS);
        }
        double first = celsius[0];
        double last = celsius[celsius.length - 1];
        double span = Math.abs(last - first);
        if (span < SMALLEST_SPAN) {
            return Outcome.of(Unusable.SPAN_TOO_SMALL);
        }
        ExponentialWindow window = ExponentialWindow.of(seconds, celsius, first, last, 0.1, 0.9);
        if (window.size() < FEWEST_POINTS) {
            return Outcome.of(Unusable.TOO_FEW_POINTS);
        }
        ExponentialWindow.Fit whole = window.fit(surroundings);
        ExponentialWindow.Fit used = slowest(whole, ExponentialWindow.of(seconds, celsius, first, last, 0.5, 0.95), surroundings);
        if (used.atEdge()) {
            return Outcome.of(Unusable.TOO_SHORT);
        }
        if (used.rSquared() < SMALLEST_R_SQUARED) {
            return Outcome.of(Unusable.NO_EXPONENTIAL);
        }
        double factor = Math.exp(2 * used.standardError() / used.tau());
        TimeConstant tau = new TimeConstant(used.tau() / factor, used.tau(), used.tau() * factor, true);
        return new Outcome(Optional.of(new CooldownFit(tau, used.surroundings(), used.rSquared(), span, window.size(), used != whole)),
                Optional.empty());
    }

    /** The fit of the late part where that is clearly slower, else the fit of the whole. */
    private static ExponentialWindow.Fit slowest(ExponentialWindow.Fit whole, ExponentialWindow lateWindow, OptionalDouble surroundings) {
        if (lateWindow.size() < FEWEST_POINTS) {
            return whole;
        }
        ExponentialWindow.Fit late = lateWindow.fit(surroundings);
        boolean clear = late.tau() - whole.tau() > 2 * Math.hypot(late.standardError(), whole.standardError());
        return !late.atEdge() && clear && late.tau() > SLOWER_FACTOR * whole.tau() ? late : whole;
    }

    private static void check(double[] seconds, double[] celsius) {
        if (seconds.length != celsius.length) {
            throw new IllegalArgumentException(seconds.length + " times but " + celsius.length + " temperatures");
        }
        for (int i = 0; i < seconds.length; i++) {
            if (!Double.isFinite(seconds[i]) || !Double.isFinite(celsius[i]) || i > 0 && !(seconds[i] > seconds[i - 1])) {
                throw new IllegalArgumentException("reading " + i + " (" + seconds[i] + " s, " + celsius[i]
                        + " °C) is not finite or not later than the one before");
            }
        }
    }
}
