package coldproof.stats.sequential;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.stats.Close;
import coldproof.stats.ReferenceTable;
import coldproof.stats.Tail;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SequentialBoundaryTest {
    private static final double REFERENCE = 1e-9; // both quadratures and the solver behind the table

    private static Tail tail(ReferenceTable.Row row) {
        return row.text("sides").equals("2") ? Tail.TWO : Tail.ONE;
    }

    private static double[] equallySpaced(int looks) {
        double[] fractions = new double[looks];
        for (int k = 1; k <= looks; k++) {
            fractions[k - 1] = (double) k / looks;
        }
        return fractions;
    }

    private static Map<String, List<ReferenceTable.Row>> studies() {
        Map<String, List<ReferenceTable.Row>> studies = new LinkedHashMap<>();
        for (ReferenceTable.Row row : ReferenceTable.read("sequential/bounds.csv").rows()) {
            studies.computeIfAbsent(row.text("family") + row.text("sides") + row.text("K"), key -> new ArrayList<>()).add(row);
        }
        return studies;
    }

    private static SequentialBoundary boundary(List<ReferenceTable.Row> rows) {
        ReferenceTable.Row first = rows.get(0);
        double[] fractions = equallySpaced(rows.size());
        if (first.text("family").startsWith("spend")) {
            Spending spending = first.text("family").equals("spend_of") ? Spending.OBRIEN_FLEMING_LIKE : Spending.POCOCK_LIKE;
            return SequentialBoundary.spending(spending, first.number("alpha"), tail(first), fractions);
        }
        return SequentialBoundary.of(rows.stream().mapToDouble(row -> row.number("z")).toArray(), tail(first), fractions);
    }

    @Test
    void boundsAndWhatTheySpendAgreeWithAnotherRecursion() {
        int checked = 0;
        for (List<ReferenceTable.Row> rows : studies().values()) {
            SequentialBoundary boundary = boundary(rows);
            for (int k = 0; k < boundary.looks(); k++) {
                Close.relative(rows.get(k).number("z"), boundary.z(k), REFERENCE, rows.get(k));
                double error = rows.get(k).number("cumulative_error");
                assertEquals(error, boundary.spent(k), Math.max(1e-12, REFERENCE * error), rows.get(k).toString()); // the table sums from 0.05 down
                Close.relative(rows.get(k).number("nominal_p"), boundary.nominalP(k), 1e-8, rows.get(k)); // a tail far out magnifies the bound's last digits
                checked++;
            }
        }
        assertEquals(160, checked);
    }

    @Test
    void driftInflationAndMeanSizeAgreeWithAnotherRecursion() {
        Map<String, List<ReferenceTable.Row>> studies = studies();
        List<ReferenceTable.Row> plans = ReferenceTable.read("sequential/plans.csv").rows();
        for (ReferenceTable.Row row : plans) {
            SequentialBoundary boundary = boundary(studies.get(row.text("family") + row.text("sides") + row.text("K")));
            SequentialDesign design = SequentialDesign.ofPower(boundary, row.number("power"));
            Close.relative(row.number("drift"), design.drift(), REFERENCE, row);
            Close.relative(row.number("inflation"), design.inflation(), REFERENCE, row);
            Close.relative(row.number("expected_fraction_h0"), design.expectedShare(0), REFERENCE, row);
            Close.relative(row.number("expected_fraction_half"), design.expectedShare(0.5), REFERENCE, row);
            Close.relative(row.number("expected_fraction_h1"), design.expectedShare(1), REFERENCE, row);
            Close.relative(row.number("expected_over_fixed_h1"), design.inflation() * design.expectedShare(1), REFERENCE, row);
        }
        assertEquals(80, plans.size());
    }

    /** C. Jennison, B. W. Turnbull, Group Sequential Methods (2000), tables 2.1 and 2.3, 5 % two-sided, three decimals (from memory). */
    @ParameterizedTest
    @CsvSource({"2, 2.178, 1.977", "3, 2.289, 2.004", "4, 2.361, 2.024", "5, 2.413, 2.040"})
    void constantsOfPublishedTablesSpendFivePercent(int looks, double pocock, double obrienFleming) {
        double[] flat = new double[looks];
        double[] falling = new double[looks];
        for (int k = 0; k < looks; k++) {
            flat[k] = pocock;
            falling[k] = obrienFleming * Math.sqrt((double) looks / (k + 1));
        }
        double rounding = 1.5e-4; // half of the last printed digit moves the error rate by about so much
        assertEquals(0.05, SequentialBoundary.of(flat, Tail.TWO, equallySpaced(looks)).spent(looks - 1), rounding);
        assertEquals(0.05, SequentialBoundary.of(falling, Tail.TWO, equallySpaced(looks)).spent(looks - 1), rounding);
    }

    /** Largest and mean size of four Pocock looks with 90 % power as printed in the documentation of SAS/STAT's SEQDESIGN procedure. */
    @Test
    void sizesOfFourPocockLooksAreThoseOfADocumentedExample() {
        double[] flat = {2.3612978910602527, 2.3612978910602527, 2.3612978910602527, 2.3612978910602527};
        SequentialDesign design = SequentialDesign.ofPower(SequentialBoundary.of(flat, Tail.TWO, equallySpaced(4)), 0.9);
        double printed = 1.5e-4; // the program's own solver leaves its last printed digit open
        assertEquals(118.3143, 100 * design.inflation(), printed);
        assertEquals(69.74805, 100 * design.inflation() * design.expectedShare(1), printed);
        assertEquals(115.6074, 100 * design.inflation() * design.expectedShare(0), printed);
    }

    /** Looking with |z| > 1.96 each time: the classic table of P. Armitage et al., JRSS A 132 (1969), one decimal of a percent (from memory). */
    @ParameterizedTest
    @CsvSource({"1, 5.0", "2, 8.3", "3, 10.7", "5, 14.2", "10, 19.3"})
    void lookingWithoutCorrectionRaisesFalseAlarms(int looks, double percent) {
        double[] plain = new double[looks];
        Arrays.fill(plain, 1.959963984540054);
        assertEquals(percent, 100 * SequentialBoundary.of(plain, Tail.TWO, equallySpaced(looks)).spent(looks - 1), 0.05);
    }

    @Test
    void boundsUpToNowDoNotDependOnLooksToCome() {
        SequentialBoundary now = SequentialBoundary.spending(Spending.OBRIEN_FLEMING_LIKE, 0.05, Tail.TWO, 0.3, 0.62);
        SequentialBoundary all = SequentialBoundary.spending(Spending.OBRIEN_FLEMING_LIKE, 0.05, Tail.TWO, 0.3, 0.62, 0.7, 1);
        Close.relative(all.z(0), now.z(0), 1e-12, "first");
        Close.relative(all.z(1), now.z(1), 1e-10, "second");
        assertEquals(0.05, all.spent(3), 1e-15);
    }

    @Test
    void looksThatLieCloseOrVeryEarlyAreNoTrouble() {
        SequentialBoundary boundary = SequentialBoundary.spending(Spending.OBRIEN_FLEMING_LIKE, 0.05, Tail.TWO, 0.0005, 0.5, 0.501, 1);
        assertEquals(Double.POSITIVE_INFINITY, boundary.z(0));
        assertEquals(0, boundary.nominalP(0));
        Close.relative(0.05, SequentialBoundary.of(new double[] {boundary.z(1), boundary.z(2), boundary.z(3)}, Tail.TWO, 0.5, 0.501, 1).spent(2), 1e-10, "close");
    }

    @Test
    void goingOnAtTheBoundIsAboutEven() {
        SequentialBoundary boundary = SequentialBoundary.spending(Spending.POCOCK_LIKE, 0.05, Tail.TWO, 0.5, 1);
        double z = boundary.z(1) * Math.sqrt(2); // the score is already at the last bound
        assertEquals(0.5, ConditionalPower.of(boundary, 0, z, 0), 1e-12);
        assertTrue(ConditionalPower.of(boundary, 0, 0, 3) < 0.5);
        double one = 1 - coldproof.stats.distribution.Normal.cdf((boundary.z(1) - 1.0 * Math.sqrt(0.5) - 3 * 0.5) / Math.sqrt(0.5));
        Close.relative(one, ConditionalPower.of(boundary, 0, 1, 3), 1e-12, "closed form for one look to come");
    }

    @Test
    void refusesWhatItCannotAnswer() {
        assertThrows(IllegalArgumentException.class, () -> SequentialBoundary.spending(Spending.POCOCK_LIKE, 0.05, Tail.TWO, 0.5, 0.5));
        assertThrows(IllegalArgumentException.class, () -> SequentialBoundary.spending(Spending.POCOCK_LIKE, 0.05, Tail.TWO, 0.5, 1.1));
        assertThrows(IllegalArgumentException.class, () -> SequentialBoundary.spending(Spending.POCOCK_LIKE, Double.NaN, Tail.TWO, 1));
        assertThrows(IllegalArgumentException.class, () -> SequentialDesign.ofPower(SequentialBoundary.spending(Spending.POCOCK_LIKE, 0.05, Tail.TWO, 0.5), 0.9));
    }
}
