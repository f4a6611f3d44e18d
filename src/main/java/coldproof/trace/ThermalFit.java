package coldproof.trace;

import coldproof.stats.series.ExponentialApproach;
import java.util.Arrays;
import java.util.Optional;

/**
 * How the die comes to its sustained temperature, by least squares of {@code T = end + rise exp(-t / tau)} from the end of the boost, over
 * means of about two seconds.
 *
 * @param timeConstantSeconds tau; NaN when the die is flat from the beginning, or the trace is too short to show it
 * @param asymptoteCelsius end; NaN likewise
 */
record ThermalFit(double timeConstantSeconds, double asymptoteCelsius) {
    private static final ThermalFit NONE = new ThermalFit(Double.NaN, Double.NaN);
    private static final double FIRST_SECONDS = 8; // the die's own quick rise is over by then; what is left is that of sink and chassis
    private static final double LEAST_RISE = 1.5; // K: a smaller approach is no more than sensors and work make by themselves
    private static final double LEAST_CERTAIN = 0.25; // relative standard error of tau from which it is not known
    private static final double STEADY_POWER = 0.03; // relative, between the first and the last third
    private static final double LONGEST_SHARE = 1.0; // of the record: a longer time constant is not shown by it

    static ThermalFit of(Blocks blocks, Boost boost, Channel power) {
        double[] die = blocks.channels().get(Channel.DIE_TEMPERATURE);
        double from = Math.max(FIRST_SECONDS, Double.isNaN(boost.seconds()) ? 0 : boost.seconds() + FIRST_SECONDS);
        int count = 0;
        double[] times = new double[blocks.count()];
        double[] values = new double[blocks.count()];
        for (int i = 0; die != null && i < blocks.count(); i++) {
            double at = (i + 0.5) * blocks.stepSeconds();
            if (at >= from && !Double.isNaN(die[i])) {
                times[count] = at;
                values[count++] = die[i];
            }
        }
        if (powerMoves(blocks, power, from)) {
            return NONE;
        }
        double span = count == 0 ? 0 : times[count - 1] - times[0];
        Optional<ExponentialApproach> fit = ExponentialApproach.of(Arrays.copyOf(times, count), Arrays.copyOf(values, count));
        return fit.filter(one -> Math.abs(one.start() - one.end()) > LEAST_RISE && one.tauError() < LEAST_CERTAIN * one.tau() && one.tau() < LONGEST_SHARE * span)
                .map(one -> new ThermalFit(one.tau(), one.end())).orElse(NONE);
    }

    /** Whether power moves while the die comes to rest: then the die follows power, or a controller, and not its own time constant. */
    private static boolean powerMoves(Blocks blocks, Channel power, double from) {
        double end = blocks.count() * blocks.stepSeconds();
        double early = blocks.mean(power, from, from + (end - from) / 3);
        double late = blocks.mean(power, end - (end - from) / 3, end);
        return Math.abs(early / late - 1) > STEADY_POWER;
    }
}
