package coldproof.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.quantity.Celsius;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WindChillTest {
    private static double windChill(double air, double kilometresPerHour) {
        return WindChill.of(new Celsius(air), kilometresPerHour / 3.6).degrees();
    }

    /** The chart of the United States weather service: 216 cells, rounded to whole °F; provenance of each cell in the file. */
    @Test
    void everyCellOfTheOfficialChartIsReproduced() {
        List<String[]> rows = Tables.rows("wind-chill-chart.csv");
        int cells = 0;
        for (String[] row : rows.subList(1, rows.size())) {
            double miles = Double.parseDouble(row[0]);
            for (int i = 1; i < row.length; i++) {
                double air = Double.parseDouble(rows.get(0)[i]);
                double printed = Double.parseDouble(row[i]);
                String cell = air + " °F, " + miles + " mph";
                assertEquals(printed, Math.rint(WindChill.inFahrenheit(air, miles)), 0, cell);
                double metric = 32 + 1.8 * windChill((air - 32) / 1.8, miles * 1.609344);
                assertEquals(printed, metric, 0.6, cell); // rounding of the chart 0.5, coefficients rounded apart 0.1
                cells++;
            }
        }
        assertEquals(12 * 18, cells);
    }

    /** Metric table computed beforehand from the published formula; wind 5 to 60 km/h, air 0 to -40 °C. */
    @ParameterizedTest(name = "{0} km/h")
    @CsvSource({"5, -2, -7, -13, -19, -24, -30, -36, -47", "10, -3, -9, -15, -21, -27, -33, -39, -51",
        "20, -5, -12, -18, -24, -30, -37, -43, -56",
        "30, -6, -13, -20, -26, -33, -39, -46, -59", "40, -7, -14, -21, -27, -34, -41, -48, -61",
        "60, -9, -16, -23, -30, -36, -43, -50, -64"})
    void metricTable(double wind, int at0, int at5, int at10, int at15, int at20, int at25, int at30, int at40) {
        double[] air = {0, -5, -10, -15, -20, -25, -30, -40};
        int[] printed = {at0, at5, at10, at15, at20, at25, at30, at40};
        for (int i = 0; i < air.length; i++) {
            assertEquals(printed[i], Math.round(windChill(air[i], wind)), air[i] + " °C");
        }
    }

    /** Both give -1.59 at 0 °C and -24.28 at -20 °C where they meet, 5 km/h. */
    @Test
    void theLightWindBranchMeetsTheMainFormula() {
        assertEquals(-1.59, windChill(0, 4.999999), 0.005);
        assertEquals(-1.59, windChill(0, 5.000001), 0.005);
        assertEquals(-24.28, windChill(-20, 4.999999), 0.005);
        assertEquals(-24.28, windChill(-20, 5.000001), 0.005);
    }

    @Test
    void calmAirFeelsAsItIs() {
        assertEquals(-20, windChill(-20, 0));
    }

    @Test
    void aboveTenDegreesThereIsNoWindChill() {
        assertEquals(10.01, windChill(10.01, 60));
        assertTrue(windChill(10, 60) < 10);
    }

    @Test
    void moreWindOrColderAirNeverFeelsWarmer() {
        for (double air = -45; air <= 10; air += 0.5) {
            for (double wind = 0; wind < 120; wind += 0.5) {
                String where = air + " °C, " + wind + " km/h";
                assertTrue(windChill(air, wind + 0.5) <= windChill(air, wind) + 0.02, where); // seam at 5 km/h: 0.01 K
                assertTrue(windChill(air - 0.5, wind) < windChill(air, wind), where);
            }
        }
    }

    @Test
    void nonsenseIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> windChill(-10, -1));
        assertThrows(IllegalArgumentException.class, () -> windChill(-10, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> windChill(-91, 10));
        assertThrows(IllegalArgumentException.class, () -> WindChill.inFahrenheit(51, 10));
    }
}
