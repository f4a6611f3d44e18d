package coldproof.reason.rehearse.bench;

import java.util.Optional;

/**
 * What is true of one simulated trial, whatever noise and sensors made of it.
 *
 * @param noiseFreeRate mean rate over the work before any scatter, in the metric's unit
 * @param shares share of the last half of the work that each {@link HeldBy} held the rate, by ordinal, summing to 1
 * @param boostSeconds from the start of the work until the 5 s mean of package power falls below half way between its level at 2 to 6 s
 *     and its mean over the last half; 0 if those two differ by less than 8 %
 * @param sustainedWatts mean package power over the last half, W
 * @param sustainedMegahertz mean clock over the last half, MHz
 * @param sustainedDieCelsius mean of the hottest die temperature over the last half, °C
 * @param sustainedFanRpm mean fan speed over the last half, 1/min
 * @param sustainedAirCelsius mean air over the last half, °C
 * @param restResistanceKelvinsPerWatt steady resistance die to air at that mean fan speed and air, K/W
 */
public record BenchTruth(double noiseFreeRate, double[] shares, double boostSeconds, double sustainedWatts, double sustainedMegahertz,
        double sustainedDieCelsius, double sustainedFanRpm, double sustainedAirCelsius, double restResistanceKelvinsPerWatt) {
    private static final double ALMOST_ALL = 0.8; // below this share no single limiter is the truth

    /** Copies the shares. */
    public BenchTruth {
        shares = shares.clone();
    }

    @Override
    public double[] shares() {
        return shares.clone();
    }

    /** Share of the last half in which this held the rate, in [0, 1]. */
    public double share(HeldBy holder) {
        return shares[holder.ordinal()];
    }

    /** What held the rate for at least 80 % of the last half; empty when it was mixed. */
    public Optional<HeldBy> limiter() {
        for (HeldBy holder : HeldBy.values()) {
            if (share(holder) >= ALMOST_ALL) {
                return Optional.of(holder);
            }
        }
        return Optional.empty();
    }

    /** Resistance as seen in the window: (hottest die - air) / package power over the last half, K/W. */
    public double windowResistanceKelvinsPerWatt() {
        return (sustainedDieCelsius - sustainedAirCelsius) / sustainedWatts;
    }
}
