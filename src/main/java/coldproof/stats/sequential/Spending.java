package coldproof.stats.sequential;

import coldproof.stats.Argument;
import coldproof.stats.distribution.Normal;

/**
 * How the false-alarm rate is given out over the information that has come in: so much may have been used up when a share of it is there.
 *
 * @see "K. K. G. Lan, D. L. DeMets, Discrete sequential boundaries for clinical trials, Biometrika 70 (1983) 659-663"
 */
public enum Spending {
    /** Very little early: {@code 2 - 2 Phi(z(1 - a/2) / sqrt(t))}. Early stopping needs an overwhelming result, the last look loses little. */
    OBRIEN_FLEMING_LIKE {
        @Override
        double share(double fraction, double rate) {
            return 2 * Normal.survival(Normal.upperPoint(rate / 2) / Math.sqrt(fraction));
        }
    },
    /** Nearly evenly: {@code a log(1 + (e - 1) t)}. Early stopping is easier, the last look loses more. */
    POCOCK_LIKE {
        @Override
        double share(double fraction, double rate) {
            return rate * Math.log1p((Math.E - 1) * fraction);
        }
    };

    abstract double share(double fraction, double rate);

    /**
     * What may have been spent.
     *
     * @param fraction share of the information of the whole study, 0 or more; more than 1 counts as 1
     * @param rate one-sided false-alarm rate of the whole study, in (0, 0.5]
     * @return in [0, rate]
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public double spent(double fraction, double rate) {
        Argument.within("information fraction", fraction, 0, Double.POSITIVE_INFINITY);
        if (!(rate > 0 && rate <= 0.5)) {
            throw new IllegalArgumentException("one-sided false-alarm rate " + rate + " is outside (0, 0.5]");
        }
        return fraction == 0 ? 0 : fraction >= 1 ? rate : Math.min(rate, share(fraction, rate));
    }
}
