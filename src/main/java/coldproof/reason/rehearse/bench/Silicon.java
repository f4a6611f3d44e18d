package coldproof.reason.rehearse.bench;

/**
 * What a clock costs in watts:
 * {@code base + dynamic activity utilisation (V/V1)^2 (f/f1) + leakage (V/V1)^2 exp(leakagePerKelvin (T - 85 °C))}
 * with {@code V/V1 = max(voltageFloor, (f/f1)^voltageExponent)}, where f1 and V1 are the highest clock and its voltage. Above the floor
 * the dynamic part goes with the clock to the power {@code 1 + 2 voltageExponent}: 2 for 0.5, 3 for 1. The exponential leakage is that
 * measured by De Vogeleer et al. 2014 (arXiv 1404.3381).
 *
 * @param lowestMegahertz clock at idle, MHz, above 0
 * @param highestMegahertz clock the silicon could reach, MHz, above the lowest
 * @param stepMegahertz distance of neighbouring clocks, MHz; a clock in between is time spent on both
 * @param baseWatts package power that no clock changes, W, 0 or more
 * @param dynamicWatts dynamic power at the highest clock and activity 1, W, above 0
 * @param leakageWatts leakage at 85 °C and the highest voltage, W, 0 or more
 * @param leakagePerKelvin growth of the leakage, 1/K, in [0, 0.05]; 0.01 to 0.02 is usual (from memory)
 * @param voltageFloor lowest voltage as a share of the highest, in [0, 1]
 * @param voltageExponent exponent of the voltage, in [0, 1]
 */
public record Silicon(double lowestMegahertz, double highestMegahertz, double stepMegahertz, double baseWatts, double dynamicWatts,
        double leakageWatts, double leakagePerKelvin, double voltageFloor, double voltageExponent) {
    static final double LEAKAGE_REFERENCE_CELSIUS = 85;
    private static final int MOST_STEPS = 2000;

    /** Refuses what is out of range. */
    public Silicon {
        Ranges.above("lowestMegahertz", lowestMegahertz, 0);
        Ranges.above("highestMegahertz", highestMegahertz, lowestMegahertz);
        Ranges.within("stepMegahertz", stepMegahertz, (highestMegahertz - lowestMegahertz) / MOST_STEPS,
                highestMegahertz - lowestMegahertz);
        Ranges.atLeast("baseWatts", baseWatts, 0);
        Ranges.above("dynamicWatts", dynamicWatts, 0);
        Ranges.atLeast("leakageWatts", leakageWatts, 0);
        Ranges.within("leakagePerKelvin", leakagePerKelvin, 0, 0.05);
        Ranges.within("voltageFloor", voltageFloor, 0, 1);
        Ranges.within("voltageExponent", voltageExponent, 0, 1);
    }
}
