package coldproof.reason.rehearse.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** The heat network against what a textbook solves by hand: lumped capacities, Incropera ch. 5 (from memory). */
class HeatStateTest {
    private static final double STEP = 0.1;

    @Test
    void restIsAmbientPlusResistanceTimesPower() {
        HeatNetwork network = new HeatNetwork(5, 60, 300, 0.5, 0.2, 0.7, 0.7, 0, 0.1, 0.9);
        HeatState state = new HeatState(network, 21);
        for (int i = 0; i < 100_000; i++) {
            state.advance(STEP, 40, 0.5, 21);
        }
        double toAir = 0.2 + 0.7 * Math.pow(0.5, 0.7);
        double byHand = 21 + 40 * (0.5 + 1 / (toAir + 1 / (1 / 0.1 + 1 / 0.9)));
        assertEquals(byHand, state.dieCelsius(), 1e-8); // 10,000 s are 25 of the slowest time constants, so exp(-25) of 70 K is left
        assertEquals(byHand, 21 + 40 * network.resistanceKelvinsPerWatt(0.5, 21), 1e-12);
        HeatState settled = new HeatState(network, 0);
        settled.settle(40, 0.5, 21);
        assertEquals(byHand, settled.dieCelsius(), 1e-12);
    }

    @Test
    void oneLumpApproachesAsAnExponentialWithTimeConstantResistanceTimesCapacity() {
        double resistance = 2;
        double capacity = 30; // time constant 60 s; the sink is held at the air by a conductance a million times that of the die
        HeatState state = new HeatState(HeatNetwork.ofTwoNodes(capacity, 1e6, resistance, 5e5, 0), 21);
        for (int i = 1; i <= 3000; i++) {
            state.advance(STEP, 25, 0, 21);
            double elapsed = i * STEP;
            double byHand = 21 + 50 * -Math.expm1(-elapsed / 60);
            assertEquals(byHand, state.dieCelsius(), 1e-4); // 25 W over 5e5 W/K is 5e-5 K
        }
    }

    @Test
    void twoLumpsFollowTheTwoModesOfTheirMatrix() {
        double dieCapacity = 4;
        double sinkCapacity = 50;
        double conductance = 1 / 0.6;
        double toAir = 0.8;
        HeatState state = new HeatState(HeatNetwork.ofTwoNodes(dieCapacity, sinkCapacity, 0.6, toAir, 0), 21);
        // rises x = T - 21 obey x' = A x + b; eigenvalues of the 2x2 matrix by the quadratic formula
        double a = -conductance / dieCapacity;
        double b = conductance / dieCapacity;
        double c = conductance / sinkCapacity;
        double d = -(conductance + toAir) / sinkCapacity;
        double root = Math.sqrt((a - d) * (a - d) + 4 * b * c);
        double fast = (a + d - root) / 2;
        double slow = (a + d + root) / 2;
        double watts = 35;
        double dieRest = watts * (0.6 + 1 / toAir);
        double sinkRest = watts / toAir;
        // die = dieRest + p e^(fast t) + q e^(slow t), with the mode's sink share (lambda - a) / b
        double fastShare = (fast - a) / b;
        double slowShare = (slow - a) / b;
        double q = (-sinkRest + dieRest * fastShare) / (slowShare - fastShare);
        double p = -dieRest - q;
        for (int i = 1; i <= 4000; i++) {
            state.advance(STEP, watts, 0, 21);
            double elapsed = i * STEP;
            double byHand = 21 + dieRest + p * Math.exp(fast * elapsed) + q * Math.exp(slow * elapsed);
            assertEquals(byHand, state.dieCelsius(), 1e-4); // fourth-order rule: (0.1 s / 2.3 s)^4 of the 21 K fast mode, over its life
        }
    }

    @Test
    void energyInIsEnergyStoredPlusEnergyGivenToTheAir() {
        HeatState state = new HeatState(new HeatNetwork(5, 60, 300, 0.5, 0.2, 0.7, 0.7, 0.6, 0.1, 0.9), -9);
        double before = state.joulesStored();
        double in = 0;
        for (int i = 0; i < 20_000; i++) {
            double watts = 30 + 20 * Math.sin(i * 0.01);
            state.advance(STEP, watts, 0.5 + 0.5 * Math.sin(i * 0.003), -9 + Math.sin(i * 0.001));
            in += watts * STEP;
        }
        double out = state.joulesStored() - before + state.joulesToAir();
        assertEquals(in, out, 1e-9 * in); // rounding of 20,000 sums
        assertTrue(state.joulesToAir() > 0.5 * in);
    }

    /**
     * From 20 to -5 °C at fixed fan speed the air is 9.7 % denser (moist) and convective resistance falls by 4.5 to 7 % for exponents
     * 0.5 to 0.8: the ideal-gas ratio alone gives 293.15/268.15 = 1.0932.
     */
    @Test
    void denserAirCoolsBetterByTheExpectedFewPercent() {
        HeatNetwork laminar = new HeatNetwork(5, 60, 0, 0.5, 0.2, 0.7, 0.7, 0.5, 0, 0);
        assertEquals(Math.sqrt(293.15 / 268.15), laminar.sinkToAirWattsPerKelvin(1, -5) / laminar.sinkToAirWattsPerKelvin(1, 20), 1e-12);
        double fall = 1 - laminar.sinkToAirWattsPerKelvin(1, 20) / laminar.sinkToAirWattsPerKelvin(1, -5);
        assertTrue(fall > 0.04 && fall < 0.07, "resistance falls by " + fall);
    }
}
