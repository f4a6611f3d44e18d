package coldproof.reason.limiter;

import coldproof.stats.interval.Median;
import coldproof.trace.Blocks;
import coldproof.trace.Channel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Which of two stays when the other moves: the die, or power. Both stand still in a trial that has come to rest, whatever holds the device;
 * but air, sink and chassis differ a little from trial to trial and from minute to minute. A power limit passes that on to the die, a heat
 * limit passes it on to power. Compared on one scale: a change of power by a share moves the die by that share of its rise above the air.
 *
 * @param dieKelvins spread of the die over thirds of the last halves, K; NaN when not known
 * @param powerKelvins spread of power, as the die would follow it, K
 */
record Held(double dieKelvins, double powerKelvins) {
    private static final int PARTS = 3;
    private static final double ENOUGH = 0.25; // K: less than this is no more than sensors show by themselves
    private static final double CLEAR = 2.5; // how much larger one spread must be
    private static final int FEWEST = 3;
    private static final double NORMAL = 1.4826; // makes the median absolute deviation the standard deviation of normal values; one odd part does not count

    /** What was found. */
    enum Which { DIE, POWER, NEITHER_SHOWN }

    static Held of(Condition condition) {
        List<Double> dies = new ArrayList<>();
        List<Double> logs = new ArrayList<>();
        List<Double> rises = new ArrayList<>();
        for (LimiterTrial trial : condition.soaked()) {
            Blocks blocks = trial.trace().blocks();
            double length = trial.trace().work().lengthSeconds();
            double air = trial.trace().thermal().airCelsius();
            for (int part = 0; part < PARTS; part++) {
                double from = length / 2 * (1 + (double) part / PARTS);
                double to = from + length / 2 / PARTS;
                double die = blocks.mean(Channel.DIE_TEMPERATURE, from, to);
                double log = Math.log(blocks.mean(trial.trace().powerChannel(), from, to));
                if (Double.isFinite(die) && Double.isFinite(log)) {
                    dies.add(die);
                    logs.add(log);
                    rises.add(die - (Double.isNaN(air) ? 20 : air)); // air is needed for the scale only: a room's will do
                }
            }
        }
        if (dies.size() < FEWEST) {
            return new Held(Double.NaN, Double.NaN);
        }
        double rise = rises.stream().mapToDouble(Double::doubleValue).average().orElse(Double.NaN);
        return new Held(spread(dies), rise * spread(logs));
    }

    private static double spread(List<Double> values) {
        double[] all = values.stream().mapToDouble(Double::doubleValue).toArray();
        double middle = Median.of(all);
        return NORMAL * Median.of(Arrays.stream(all).map(value -> Math.abs(value - middle)).toArray());
    }

    Which which() {
        if (powerKelvins > ENOUGH && powerKelvins > CLEAR * dieKelvins) {
            return Which.DIE;
        }
        return dieKelvins > ENOUGH && dieKelvins > CLEAR * powerKelvins ? Which.POWER : Which.NEITHER_SHOWN;
    }
}
