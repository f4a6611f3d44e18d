package coldproof.reason.rehearse.bench;

/**
 * The way of the heat: die to sink, sink to air by the fan, and, when the chassis has a heat capacity, sink to chassis to air. The
 * conductance from sink to air is {@code (still + fan (rpm / highest rpm)^fanExponent) (294.15 K / air)^airDensityExponent}.
 *
 * @param dieJoulesPerKelvin heat capacity of the die and its spreader, J/K, above 0
 * @param sinkJoulesPerKelvin heat capacity of the fin stack, J/K, above 0
 * @param chassisJoulesPerKelvin heat capacity of the chassis, J/K; 0 for a device whose chassis takes no part
 * @param dieToSinkKelvinsPerWatt resistance of paste, spreader and pipes, K/W, above 0
 * @param stillWattsPerKelvin conductance sink to air with the fan stopped, W/K, above 0
 * @param fanWattsPerKelvin what the fan adds at its highest speed, W/K, 0 or more
 * @param fanExponent exponent of the speed, in [0.3, 1]; forced convection goes with the flow to the power 0.5 (laminar) to 0.8
 *     (turbulent), from memory after Incropera
 * @param airDensityExponent exponent of the air's density at fixed speed, in [0, 1]; 0.5 to 0.8 for the same reason
 * @param sinkToChassisWattsPerKelvin conductance, W/K, 0 or more
 * @param chassisToAirWattsPerKelvin conductance, W/K; above 0 when the chassis takes part
 */
public record HeatNetwork(double dieJoulesPerKelvin, double sinkJoulesPerKelvin, double chassisJoulesPerKelvin,
        double dieToSinkKelvinsPerWatt, double stillWattsPerKelvin, double fanWattsPerKelvin, double fanExponent,
        double airDensityExponent, double sinkToChassisWattsPerKelvin, double chassisToAirWattsPerKelvin) {
    private static final double REFERENCE_KELVIN = 294.15; // 21 °C, where the conductances are stated
    private static final double FASTEST_SECONDS = 0.4; // four integration steps; a faster die would not be resolved

    /** Refuses what is not a heat network, and a die too fast for the step of the simulation. */
    public HeatNetwork {
        Ranges.above("dieJoulesPerKelvin", dieJoulesPerKelvin, 0);
        Ranges.above("sinkJoulesPerKelvin", sinkJoulesPerKelvin, 0);
        Ranges.atLeast("chassisJoulesPerKelvin", chassisJoulesPerKelvin, 0);
        Ranges.above("dieToSinkKelvinsPerWatt", dieToSinkKelvinsPerWatt, 0);
        Ranges.above("stillWattsPerKelvin", stillWattsPerKelvin, 0);
        Ranges.atLeast("fanWattsPerKelvin", fanWattsPerKelvin, 0);
        Ranges.within("fanExponent", fanExponent, 0.3, 1);
        Ranges.within("airDensityExponent", airDensityExponent, 0, 1);
        Ranges.atLeast("sinkToChassisWattsPerKelvin", sinkToChassisWattsPerKelvin, 0);
        Ranges.atLeast("chassisToAirWattsPerKelvin", chassisToAirWattsPerKelvin, 0);
        if (chassisJoulesPerKelvin == 0 && sinkToChassisWattsPerKelvin > 0) {
            throw new IllegalArgumentException("a chassis without heat capacity cannot take heat from the sink");
        }
        if (chassisJoulesPerKelvin > 0) {
            Ranges.above("chassisToAirWattsPerKelvin", chassisToAirWattsPerKelvin, 0);
        }
        Ranges.atLeast("time constant of the die (dieJoulesPerKelvin times dieToSinkKelvinsPerWatt)",
                dieJoulesPerKelvin * dieToSinkKelvinsPerWatt, FASTEST_SECONDS);
        double sinkConductance = stillWattsPerKelvin + fanWattsPerKelvin + 1 / dieToSinkKelvinsPerWatt + sinkToChassisWattsPerKelvin;
        Ranges.atLeast("time constant of the sink (sinkJoulesPerKelvin over all its conductances)",
                sinkJoulesPerKelvin / sinkConductance, FASTEST_SECONDS);
    }

    /** A device of two nodes, die and sink. */
    public static HeatNetwork ofTwoNodes(double dieJoulesPerKelvin, double sinkJoulesPerKelvin, double dieToSinkKelvinsPerWatt,
            double stillWattsPerKelvin, double fanWattsPerKelvin) {
        return new HeatNetwork(dieJoulesPerKelvin, sinkJoulesPerKelvin, 0, dieToSinkKelvinsPerWatt, stillWattsPerKelvin,
                fanWattsPerKelvin, 0.7, 0.6, 0, 0);
    }

    /** The same device with the resistance of the die to the sink multiplied, as by other paste. */
    public HeatNetwork withPaste(double scale) {
        return new HeatNetwork(dieJoulesPerKelvin, sinkJoulesPerKelvin, chassisJoulesPerKelvin, dieToSinkKelvinsPerWatt * scale,
                stillWattsPerKelvin, fanWattsPerKelvin, fanExponent, airDensityExponent, sinkToChassisWattsPerKelvin,
                chassisToAirWattsPerKelvin);
    }

    /**
     * Conductance from sink to air, W/K.
     *
     * @param fanShare speed as a share of the highest, in [0, 1]
     * @param airCelsius air at the inlet, °C
     */
    public double sinkToAirWattsPerKelvin(double fanShare, double airCelsius) {
        return (stillWattsPerKelvin + fanWattsPerKelvin * Math.pow(fanShare, fanExponent))
                * Math.pow(REFERENCE_KELVIN / (airCelsius + 273.15), airDensityExponent);
    }

    /**
     * Steady resistance from die to air, K/W: {@code R(die, sink) + 1 / (G(sink, air) + 1 / (1/G(sink, chassis) + 1/G(chassis, air)))}.
     *
     * @param fanShare speed as a share of the highest, in [0, 1]
     * @param airCelsius air at the inlet, °C
     */
    public double resistanceKelvinsPerWatt(double fanShare, double airCelsius) {
        double toAir = sinkToAirWattsPerKelvin(fanShare, airCelsius);
        if (sinkToChassisWattsPerKelvin > 0) {
            toAir += 1 / (1 / sinkToChassisWattsPerKelvin + 1 / chassisToAirWattsPerKelvin);
        }
        return dieToSinkKelvinsPerWatt + 1 / toAir;
    }
}
