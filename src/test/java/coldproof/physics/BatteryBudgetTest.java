package coldproof.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.quantity.Celsius;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BatteryBudgetTest {
    /**
     * Published pair: 100 % at 27 °C, typically 50 % at -18 °C (a battery teaching site, repeated by a cell maker). Between: the straight
     * line.
     */
    @ParameterizedTest(name = "{0} °C: {1}")
    @CsvSource({"27, 1.00", "-18, 0.50", "25, 0.98", "0, 0.70", "-5, 0.64", "-10, 0.59", "-20, 0.48", "45, 1.00"})
    void theColdTakesItsShare(double cell, double share) {
        assertEquals(share, BatteryBudget.coldShare(new Celsius(cell)), 0.005);
    }

    /**
     * 60 Wh from 100 to 30 %, a fifth kept back: 25.2 Wh at a share of 0.75, 21.5 Wh at -5 °C; a trial of 20 min at 35 W and 5 min at 8 W
     * takes 12.33 Wh.
     */
    @Test
    void aWorkedExample() {
        BatteryBudget budget = new BatteryBudget(60, 1, 0.3, new Celsius(-5), 0.2);
        assertEquals(25.2, budget.availableWattHours(0.75), 1e-9);
        assertEquals(21.65, budget.availableWattHours(), 0.05); // 21.5 with the share rounded to 0.64
        assertEquals(12.33, BatteryBudget.wattHours(35, 1200, 8, 300), 0.005);
        assertEquals(1, budget.trials(35, 1200, 8, 300));
        assertEquals(2, (int) Math.floor(budget.availableWattHours(0.75) / BatteryBudget.wattHours(35, 1200, 8, 300)));
        assertEquals(budget.availableWattHours() / 35, budget.seconds(35) / 3600, 1e-12);
    }

    @Test
    void colderNeverGivesMore() {
        for (double cell = -40; cell < 60; cell += 0.5) {
            assertTrue(BatteryBudget.coldShare(new Celsius(cell)) <= BatteryBudget.coldShare(new Celsius(cell + 0.5)));
        }
    }

    @Test
    void nonsenseIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new BatteryBudget(0, 1, 0.3, new Celsius(0), 0.2));
        assertThrows(IllegalArgumentException.class, () -> new BatteryBudget(60, 0.3, 0.3, new Celsius(0), 0.2));
        assertThrows(IllegalArgumentException.class, () -> new BatteryBudget(60, 1.2, 0.3, new Celsius(0), 0.2));
        assertThrows(IllegalArgumentException.class, () -> new BatteryBudget(60, 1, 0.3, new Celsius(0), 1));
        assertThrows(IllegalArgumentException.class, () -> new BatteryBudget(60, 1, 0.3, new Celsius(-41), 0.2));
    }
}
