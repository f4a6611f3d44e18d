package coldproof.reason.rehearse.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ClockTableTest {
    /** Above the floor of the voltage, dynamic power goes with the clock to the power 1 + 2 times the voltage's exponent. */
    @ParameterizedTest
    @ValueSource(doubles = {0.5, 0.75, 1})
    void dynamicPowerIsAPowerOfTheClock(double voltageExponent) {
        ClockTable table = new ClockTable(new Silicon(1000, 4000, 1000, 0, 50, 0, 0, 0, voltageExponent));
        assertEquals(50 * Math.pow(0.5, 1 + 2 * voltageExponent), table.watts(table.indexOf(2000), 1, 0), 1e-12);
        assertEquals(50, table.watts(table.topIndex(), 1, 0), 1e-12);
    }

    /** Doubling every ln 2 / k kelvins, the exponential law of De Vogeleer et al. 2014 (arXiv 1404.3381). */
    @Test
    void leakageDoublesWithTemperature() {
        ClockTable table = new ClockTable(new Silicon(1000, 4000, 100, 2, 40, 8, Math.log(2) / 50, 0.5, 0.8));
        assertEquals(8, table.leakageWatts(85), 1e-12);
        assertEquals(4, table.leakageWatts(35), 1e-12);
    }

    @Test
    void aBudgetIsMetExactlyBetweenTwoClocks() {
        ClockTable table = new ClockTable(new Silicon(600, 4200, 25, 2.4, 44, 9, 0.014, 0.55, 0.75));
        for (double budget = table.watts(0, 0.9, 5) + 0.01; budget < table.watts(table.topIndex(), 0.9, 5); budget += 0.37) {
            double index = table.indexWithin(budget, 0.9, 5);
            assertEquals(budget, table.watts(index, 0.9, 5), 1e-10);
        }
        assertEquals(0, table.indexWithin(0.1, 0.9, 5), 0);
        assertEquals(table.topIndex(), table.indexWithin(1000, 0.9, 5), 0);
    }

    @Test
    void aClockIsFoundAgainFromItsIndex() {
        ClockTable table = new ClockTable(new Silicon(600, 4210, 25, 2.4, 44, 9, 0.014, 0.55, 0.75));
        assertEquals(2800, table.megahertz(table.indexOf(2800)), 1e-9);
        assertTrue(table.megahertz(table.topIndex()) <= 4210);
        assertEquals(4210, table.megahertz(table.indexOf(99_999)), 1e-9);
    }
}
