package coldproof.reason.rehearse.bench;

/**
 * How telemetry falls short of the truth. A digital sensor on a die resolves 1 °C and is valid from 0 °C up (kernel documentation of such
 * drivers): below, it sticks at {@code dieClipCelsius}.
 *
 * @param samplingSeconds distance of samples, s, in [0.1, 60]
 * @param timeJitterSeconds standard deviation of time stamps, s, 0 or more and well below the distance of samples
 * @param dieLagSeconds time constant of the die sensors, s, 0 or more
 * @param dieNoiseKelvins standard deviation of a die reading, K, 0 or more
 * @param dieStepKelvins resolution of a die reading, K, 0 for none
 * @param dieClipCelsius lowest die reading, °C; negative infinity for none
 * @param coolerKelvinsPerWatt how much cooler the second die sensor sits, K per W of package power, 0 or more
 * @param airLagSeconds time constant of the air probe, s, 0 or more
 * @param powerStepWatts resolution of package power, W, 0 for none
 * @param clockNoiseMegahertz standard deviation of a clock reading, MHz, 0 or more
 * @param lostCellChance chance that a reading is missing (NaN), in [0, 0.5]
 * @param stuckChance chance that in a trial the first die sensor freezes for a quarter of the work, in [0, 1]
 */
public record Sensors(double samplingSeconds, double timeJitterSeconds, double dieLagSeconds, double dieNoiseKelvins,
        double dieStepKelvins, double dieClipCelsius, double coolerKelvinsPerWatt, double airLagSeconds, double powerStepWatts,
        double clockNoiseMegahertz, double lostCellChance, double stuckChance) {
    /** Sensors that tell the truth once a second. */
    public static final Sensors PERFECT = new Sensors(1, 0, 0, 0, 0, Double.NEGATIVE_INFINITY, 0, 0, 0, 0, 0, 0);

    /** Refuses what is out of range. */
    public Sensors {
        Ranges.within("samplingSeconds", samplingSeconds, 0.1, 60);
        Ranges.within("timeJitterSeconds", timeJitterSeconds, 0, samplingSeconds / 10);
        Ranges.atLeast("dieLagSeconds", dieLagSeconds, 0);
        Ranges.atLeast("dieNoiseKelvins", dieNoiseKelvins, 0);
        Ranges.atLeast("dieStepKelvins", dieStepKelvins, 0);
        Ranges.within("dieClipCelsius", dieClipCelsius, Double.NEGATIVE_INFINITY, 40);
        Ranges.atLeast("coolerKelvinsPerWatt", coolerKelvinsPerWatt, 0);
        Ranges.atLeast("airLagSeconds", airLagSeconds, 0);
        Ranges.atLeast("powerStepWatts", powerStepWatts, 0);
        Ranges.atLeast("clockNoiseMegahertz", clockNoiseMegahertz, 0);
        Ranges.within("lostCellChance", lostCellChance, 0, 0.5);
        Ranges.within("stuckChance", stuckChance, 0, 1);
    }
}
