package coldproof.report.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TicksTest {
    /** Steps as base R 4.2 gives them: {@code diff(pretty(c(low, high), 6))[1]}; on these ranges the two rules of rounding agree. */
    @ParameterizedTest(name = "{0} to {1}")
    @CsvSource({"0, 1, 0.2", "0, 100, 20", "-3, 3, 1", "45.5, 54.8, 2", "0, 5.2, 1", "1200, 5200, 500", "-0.004, 0.006, 0.002", "0, 33, 5"})
    void stepsAreThoseOfAnotherProgram(double low, double high, double step) {
        List<Double> values = Ticks.inside(low, high, 6).values();
        assertEquals(step, values.get(1) - values.get(0), 1e-12 * Math.abs(high));
    }

    /** Any range: ticks lie inside, are whole multiples of 1, 2 or 5 times a power of ten, neither too few nor too many, and no two read alike. */
    @Test
    void anyRangeHasRoundTicksThatReadDifferently() {
        SplittableRandom random = new SplittableRandom(20260114);
        for (int i = 0; i < 20_000; i++) {
            double size = Math.pow(10, random.nextDouble(-5, 9));
            double low = random.nextDouble(-1, 1) * size;
            double high = low + size * Math.pow(10, random.nextDouble(-3, 0));
            Ticks ticks = Ticks.inside(low, high, 6);
            String input = "seed 20260114, draw " + i + ": " + low + " to " + high + " gives " + ticks;
            assertTrue(ticks.values().size() >= 3 && ticks.values().size() <= 10, input);
            double slack = 1e-8 * (high - low);
            assertTrue(ticks.values().get(0) >= low - slack && ticks.values().get(ticks.values().size() - 1) <= high + slack, input);
            double step = ticks.values().get(1) - ticks.values().get(0);
            double lead = step / Math.pow(10, Math.floor(Math.log10(step * 1.0000001)));
            assertTrue(Set.of(1L, 2L, 5L).contains(Math.round(lead)) && Math.abs(lead - Math.rint(lead)) < 1e-6, input);
            if (step >= 1e-6 && Math.abs(high) < 1e7 && Math.abs(low) < 1e7) {
                assertEquals(ticks.values().size(), new HashSet<>(ticks.values().stream().map(ticks::label).toList()).size(), input);
            }
        }
    }

    @Test
    void zeroHasNoSign() {
        assertEquals("0.0", new Ticks(List.of(-0.0), 1).label(-1e-17));
    }

    @Test
    void anEmptyRangeIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> Ticks.inside(1, 1, 6));
        assertThrows(IllegalArgumentException.class, () -> Ticks.inside(0, Double.NaN, 6));
        assertThrows(IllegalArgumentException.class, () -> Ticks.inside(0, Double.POSITIVE_INFINITY, 6));
    }
}
