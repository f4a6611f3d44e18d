package coldproof.reason.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.plan.Better;
import coldproof.stats.interval.Fieller;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class LedgersTest {
    private static final double INFINITE = Double.POSITIVE_INFINITY;
    private static final LedgerWorkload RENDER = new LedgerWorkload("render", "frames/s", Better.HIGHER);
    private static final LedgerWorkload BUILD = new LedgerWorkload("build", "s", Better.LOWER);

    private static LedgerFigure figure(double value, double uncertaintyPercent) {
        return new LedgerFigure(value, OptionalDouble.of(uncertaintyPercent), INFINITE, OptionalInt.empty(), "test", "", false);
    }

    private static LedgerFigure results(double... values) {
        return LedgerFigure.ofLogs(Arrays.stream(values).map(Math::log).toArray(), "test", "", false);
    }

    private static LedgerDevice device(String name, Object... figures) {
        Map<String, LedgerFigure> all = new LinkedHashMap<>();
        for (int i = 0; i < figures.length; i += 2) {
            all.put((String) figures[i], (LedgerFigure) figures[i + 1]);
        }
        return new LedgerDevice(name, Optional.empty(), Optional.empty(), Optional.empty(), OptionalDouble.empty(), all);
    }

    private static Ledger compare(List<LedgerWorkload> workloads, LedgerDevice... devices) {
        return Ledgers.compare(new LedgerSheet("a test", devices[0].name(), 0.95, "", false, workloads, List.of(devices)));
    }

    private static LedgerRow row(LedgerTable table, String device) {
        return table.rows().stream().filter(row -> row.device().equals(device)).findFirst().orElseThrow();
    }

    /** R 4.2.2: {@code t.test(log(a), log(b))} (Welch) of the values here; estimate, standard error, df, 95 % interval. */
    @Test
    void aDifferenceOfTwoListsIsThatOfWelchsTestOnLogarithms() {
        Ledger ledger = compare(List.of(RENDER), device("b", "render", results(61.8, 62.4, 61.5, 62.0, 61.9, 63.1)),
                device("a", "render", results(64.2, 65.1, 63.9, 64.8)));
        Standing standing = row(ledger.tables().get(0), "a").standing();
        assertEquals(0.03765798967398748, standing.logSpeedRatio(), 1e-14);
        // the uncertainty is kept as a coefficient of variation and comes back by sqrt(log(1 + cv^2)): the same number but for rounding
        assertEquals(0.00562632877735228, standing.standardUncertainty(), 1e-14);
        assertEquals(6.88790956115188546, standing.degreesOfFreedom(), 1e-9);
        assertEquals(0.02430982061816938, standing.interval().orElseThrow().low(), 1e-12);
        assertEquals(0.05100615872980558, standing.interval().orElseThrow().high(), 1e-12);
        assertEquals(Told.FASTER, standing.told());
    }

    /** 100 s against 80 s: 25 % faster, and the other way round 20 % slower. By definition of the words. */
    @Test
    void fasterOneWayIsSlowerTheOtherWithAnotherPercentage() {
        Standing standing = row(compare(List.of(BUILD), device("old", "build", figure(100, 1)), device("new", "build", figure(80, 1))).tables().get(0), "new").standing();
        assertEquals(25, standing.percentAgainstReference(), 1e-12);
        assertEquals(-20, standing.percentOfReferenceAgainstIt(), 1e-12);
    }

    @Test
    void theChoiceOfTheReferenceChangesNoFinding() {
        LedgerDevice one = device("one", "render", figure(50, 2), "build", figure(300, 1));
        LedgerDevice two = device("two", "render", figure(56, 1.5), "build", figure(290, 2));
        LedgerTable there = compare(List.of(RENDER, BUILD), one, two).tables().get(2);
        LedgerTable back = compare(List.of(RENDER, BUILD), two, one).tables().get(2);
        Standing forth = row(there, "two").standing();
        Standing opposite = row(back, "one").standing();
        assertEquals(forth.logSpeedRatio(), -opposite.logSpeedRatio(), 1e-15);
        assertEquals(forth.interval().orElseThrow().low(), -opposite.interval().orElseThrow().high(), 1e-15);
    }

    /** P. J. Fleming, J. J. Wallace (1986): the geometric mean of ratios is the ratio of geometric means, whatever the reference; arithmetic by hand. */
    @Test
    void workloadsAreAveragedByTheGeometricMean() {
        LedgerTable all = compare(List.of(RENDER, BUILD), device("one", "render", figure(50, 1), "build", figure(100, 1)),
                device("two", "render", figure(200, 1), "build", figure(100, 1))).tables().get(2);
        Standing standing = row(all, "two").standing();
        assertEquals(100, standing.percentAgainstReference(), 1e-9); // sqrt(4 * 1) = 2
        assertEquals(Math.sqrt(4 * Math.log1p(1e-4)) / 2, standing.standardUncertainty(), 1e-15);
    }

    @Test
    void aPowerCountsOnceHoweverManyWorkloads() {
        LedgerFigure power = figure(35, 4);
        LedgerDevice one = new LedgerDevice("one", Optional.empty(), Optional.empty(), Optional.of(power), OptionalDouble.empty(),
                Map.of("render", figure(50, 0), "build", figure(100, 0)));
        LedgerDevice two = new LedgerDevice("two", Optional.empty(), Optional.empty(), Optional.of(figure(70, 0)), OptionalDouble.empty(),
                Map.of("render", figure(50, 0), "build", figure(100, 0)));
        Ledger ledger = compare(List.of(RENDER, BUILD), one, two);
        LedgerTable perWatt = ledger.tables().stream().filter(table -> table.kind() == LedgerTable.Kind.PER_WATT && table.workload().isEmpty()).findFirst().orElseThrow();
        Standing standing = row(perWatt, "two").standing();
        assertEquals(-50, standing.percentAgainstReference(), 1e-12);
        assertEquals(Math.sqrt(Math.log1p(0.04 * 0.04)), standing.standardUncertainty(), 1e-15, "not divided by the root of two");
    }

    @Test
    void ranksAreIntervalsWhereNoiseHidesTheOrder() {
        LedgerTable table = compare(List.of(RENDER), device("slow", "render", figure(40, 1)), device("middle", "render", figure(60, 1)),
                device("also middle", "render", figure(60.5, 1)), device("fast", "render", figure(90, 1))).tables().get(0);
        assertEquals(List.of("fast", "also middle", "middle", "slow"), table.rows().stream().map(LedgerRow::device).toList());
        assertEquals(1, row(table, "fast").worstRank().orElseThrow());
        assertEquals(2, row(table, "middle").bestRank().orElseThrow());
        assertEquals(3, row(table, "also middle").worstRank().orElseThrow());
        assertEquals(4, row(table, "slow").bestRank().orElseThrow());
    }

    @Test
    void aValueWithoutUncertaintyIsNeverToldApart() {
        LedgerFigure bare = new LedgerFigure(900, OptionalDouble.empty(), INFINITE, OptionalInt.empty(), "a poster", "", false);
        Ledger ledger = compare(List.of(RENDER), device("own", "render", figure(60, 1)), device("poster", "render", bare));
        LedgerRow row = row(ledger.tables().get(0), "poster");
        assertEquals(Told.NOT_STATED, row.standing().told());
        assertTrue(row.standing().interval().isEmpty() && row.bestRank().orElseThrow() == 1 && row.worstRank().orElseThrow() == 2);
        assertTrue(ledger.warnings().get(0).contains("does not say how sure"));
    }

    @Test
    void aHeldUnitStandsBesideAFreeOneOfItsSilicon() {
        LedgerDevice held = new LedgerDevice("held", Optional.of("tarn seven"), Optional.of("35 W cap"), Optional.empty(), OptionalDouble.empty(),
                Map.of("render", figure(60, 1)));
        LedgerDevice free = new LedgerDevice("free", Optional.of("tarn seven"), Optional.empty(), Optional.empty(), OptionalDouble.empty(),
                Map.of("render", figure(80, 1)));
        Restraint restraint = compare(List.of(RENDER), device("other", "render", figure(60, 1)), held, free).restraints().get(0);
        assertEquals("held", restraint.constrained());
        assertEquals(-25, restraint.standing().percentAgainstReference(), 1e-12);
        assertEquals(Told.SLOWER, restraint.standing().told());
    }

    /** For an uncertainty of a few percent Fieller's interval of the ratio and that of the logarithms are nearly the same. */
    @Test
    void fiellersIntervalAgreesForSmallUncertainties() {
        LedgerRow row = row(compare(List.of(RENDER), device("one", "render", figure(50, 1)), device("two", "render", figure(60, 1))).tables().get(0), "two");
        assertEquals(Math.exp(row.standing().interval().orElseThrow().low()), row.ratioOfMeans().orElseThrow().low(), 1e-4 * 1.2);
        assertEquals(Math.exp(row.standing().interval().orElseThrow().high()), row.ratioOfMeans().orElseThrow().high(), 1e-4 * 1.2);
    }

    /**
     * The help page of an open statistics package on Fieller's theorem, example with a = 14, b = 7, standard deviations of the means 3 and 2,
     * no correlation, 10 df, 90 %: 1.051413 to 4.414296.
     */
    @Test
    void fiellersIntervalIsThatOfAPublishedExample() {
        Fieller found = Fieller.of(14, 7, 9, 4, 0, 10, 0.9);
        assertEquals(1.051413, found.interval().low(), 5e-7); // half of the last printed digit
        assertEquals(4.414296, found.interval().high(), 5e-7);
    }

    @Test
    void aDenominatorThatMayBeZeroHasNoBoundedRatio() {
        LedgerRow row = row(compare(List.of(RENDER), device("one", "render", figure(50, 60)), device("two", "render", figure(60, 1))).tables().get(0), "two");
        assertTrue(!row.ratioOfMeans().orElseThrow().isBounded());
    }
}
