package coldproof.reason.rehearse.bench;

/** Temperatures of a heat network, stepped by the classic fourth-order Runge-Kutta rule; keeps the energy book as it goes. */
final class HeatState {
    private final HeatNetwork network;
    private double die;
    private double sink;
    private double chassis;
    private double joulesToAir;
    private double conductance; // sink to air during the step, W/K
    private double air;
    private double watts;

    HeatState(HeatNetwork network, double celsius) {
        this.network = network;
        die = celsius;
        sink = celsius;
        chassis = celsius;
    }

    /** Puts every node at rest under steady power. */
    void settle(double steadyWatts, double fanShare, double airCelsius) {
        double toAir = network.sinkToAirWattsPerKelvin(fanShare, airCelsius);
        double throughChassis = 0;
        if (network.chassisJoulesPerKelvin() > 0 && network.sinkToChassisWattsPerKelvin() > 0) {
            throughChassis = 1 / (1 / network.sinkToChassisWattsPerKelvin() + 1 / network.chassisToAirWattsPerKelvin());
        }
        sink = airCelsius + steadyWatts / (toAir + throughChassis);
        die = sink + steadyWatts * network.dieToSinkKelvinsPerWatt();
        chassis = throughChassis == 0 ? airCelsius
                : airCelsius + (sink - airCelsius) * throughChassis / network.chassisToAirWattsPerKelvin();
    }

    /** Goes one step with power, fan and air held. */
    void advance(double seconds, double packageWatts, double fanShare, double airCelsius) {
        watts = packageWatts;
        air = airCelsius;
        conductance = network.sinkToAirWattsPerKelvin(fanShare, airCelsius);
        boolean hasChassis = network.chassisJoulesPerKelvin() > 0;
        double half = seconds / 2;
        double d1 = dieSlope(die, sink);
        double s1 = sinkSlope(die, sink, chassis);
        double c1 = hasChassis ? chassisSlope(sink, chassis) : 0;
        double q1 = flowToAir(sink, chassis);
        double dieB = die + half * d1;
        double sinkB = sink + half * s1;
        double chassisB = chassis + half * c1;
        double d2 = dieSlope(dieB, sinkB);
        double s2 = sinkSlope(dieB, sinkB, chassisB);
        double c2 = hasChassis ? chassisSlope(sinkB, chassisB) : 0;
        double q2 = flowToAir(sinkB, chassisB);
        double dieC = die + half * d2;
        double sinkC = sink + half * s2;
        double chassisC = chassis + half * c2;
        double d3 = dieSlope(dieC, sinkC);
        double s3 = sinkSlope(dieC, sinkC, chassisC);
        double c3 = hasChassis ? chassisSlope(sinkC, chassisC) : 0;
        double q3 = flowToAir(sinkC, chassisC);
        double dieD = die + seconds * d3;
        double sinkD = sink + seconds * s3;
        double chassisD = chassis + seconds * c3;
        double sixth = seconds / 6;
        double c4 = hasChassis ? chassisSlope(sinkD, chassisD) : 0;
        double q4 = flowToAir(sinkD, chassisD);
        die += sixth * (d1 + 2 * d2 + 2 * d3 + dieSlope(dieD, sinkD));
        sink += sixth * (s1 + 2 * s2 + 2 * s3 + sinkSlope(dieD, sinkD, chassisD));
        chassis += sixth * (c1 + 2 * c2 + 2 * c3 + c4);
        joulesToAir += sixth * (q1 + 2 * q2 + 2 * q3 + q4);
    }

    double dieCelsius() {
        return die;
    }

    /** Energy given to the air since the beginning, J. */
    double joulesToAir() {
        return joulesToAir;
    }

    /** Energy stored above 0 °C, J. */
    double joulesStored() {
        return network.dieJoulesPerKelvin() * die + network.sinkJoulesPerKelvin() * sink + network.chassisJoulesPerKelvin() * chassis;
    }

    private double dieSlope(double dieNow, double sinkNow) {
        return (watts - (dieNow - sinkNow) / network.dieToSinkKelvinsPerWatt()) / network.dieJoulesPerKelvin();
    }

    private double sinkSlope(double dieNow, double sinkNow, double chassisNow) {
        return ((dieNow - sinkNow) / network.dieToSinkKelvinsPerWatt() - conductance * (sinkNow - air)
                - network.sinkToChassisWattsPerKelvin() * (sinkNow - chassisNow)) / network.sinkJoulesPerKelvin();
    }

    private double chassisSlope(double sinkNow, double chassisNow) {
        return (network.sinkToChassisWattsPerKelvin() * (sinkNow - chassisNow) - network.chassisToAirWattsPerKelvin() * (chassisNow - air))
                / network.chassisJoulesPerKelvin();
    }

    private double flowToAir(double sinkNow, double chassisNow) {
        double flow = conductance * (sinkNow - air);
        return network.chassisJoulesPerKelvin() > 0 ? flow + network.chassisToAirWattsPerKelvin() * (chassisNow - air) : flow;
    }
}
