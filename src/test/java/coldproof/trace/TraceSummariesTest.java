package coldproof.trace;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.trace.ChannelMap.MappedColumn;
import coldproof.trace.ChannelMap.Origin;
import coldproof.trace.ColumnSample.CellKind;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class TraceSummariesTest {
    private static MappedColumn column(int index, Channel channel, TraceUnit unit) {
        return new MappedColumn(index, channel.label(), channel, unit, CellKind.NUMBER, Origin.NAME);
    }

    private static final ChannelMap MAP = new ChannelMap(column(0, Channel.TIME, TraceUnit.SECOND), List.of(
            column(1, Channel.DIE_TEMPERATURE, TraceUnit.CELSIUS), column(2, Channel.PACKAGE_POWER, TraceUnit.WATT),
            column(3, Channel.UTILISATION, TraceUnit.PERCENT)));

    private static TraceSummary summarise(TraceAccumulator accumulator) {
        return TraceSummaries.summarise(accumulator.series(), OptionalDouble.of(20)).orElseThrow();
    }

    /** Ten seconds of rest, then work: 40 W for twenty seconds, 20 W afterwards, for 120 s. */
    private static TraceAccumulator stepped(double offset, double watts) {
        TraceAccumulator accumulator = new TraceAccumulator(MAP);
        for (int t = 1; t <= 140; t++) {
            boolean work = t > 10 && t <= 130;
            double power = !work ? 2 : t <= 30 ? 2 * watts : watts;
            accumulator.row(t + 1, new double[] {offset + t, work ? 70 : 30, power, work ? 99 : 2});
        }
        return accumulator;
    }

    @Test
    void phasesAndLevelsOfAStepAreExact() {
        TraceSummary summary = summarise(stepped(0, 20));
        assertEquals(120, summary.work().lengthSeconds(), 1e-9);
        assertEquals(Channel.UTILISATION, summary.work().toldBy());
        assertEquals(40, summary.boost().watts(), 1e-9);
        assertEquals(20, summary.boost().seconds(), 1.0); // the step lies at 20 s; the definition counts in rows of a second
        assertEquals(20, summary.mean(Channel.PACKAGE_POWER).orElseThrow(), 1e-9);
        assertEquals(50 / 20.0, summary.thermal().kelvinsPerWatt(), 1e-9);
        assertEquals((20 * 40 + 100 * 20) / 3600.0, summary.energyWattHours(), 1e-9);
        assertTrue(summary.isSteady());
        assertEquals(List.of(Phase.Kind.BOOST, Phase.Kind.SUSTAINED), summary.phases().stream().map(Phase::kind).toList());
        assertEquals(120, summary.phases().get(1).toSeconds(), 1e-9);
    }

    /** Oracle: one entry after the other, on times that rise unevenly. */
    @Test
    void findsTheEntryOfATimeAsGoingThroughAllOfThemDoes() {
        SplittableRandom random = new SplittableRandom(31);
        TraceAccumulator accumulator = new TraceAccumulator(MAP);
        double time = 0;
        for (int line = 2; line < 500; line++) {
            time += random.nextInt(8) == 0 ? 20 * random.nextDouble() : 1;
            accumulator.row(line, new double[] {time, 60, 20, 50});
        }
        Series series = accumulator.series();
        Work work = new Work(7, series.size() - 9, series.seconds(6), series.seconds(series.size() - 10), Channel.TIME);
        for (double wanted = -5; wanted < work.lengthSeconds() + 30; wanted += 0.25) {
            int expected = work.from();
            while (expected + 1 < work.to() && work.middleSeconds(series, expected) < wanted) {
                expected++;
            }
            assertEquals(expected, work.entryAt(series, wanted), "at " + wanted + " s");
        }
    }

    @Test
    void withoutABoostThereIsNone() {
        TraceAccumulator accumulator = new TraceAccumulator(MAP);
        for (int t = 1; t <= 140; t++) {
            accumulator.row(t + 1, new double[] {t, 60, t > 10 ? 20 : 2, t > 10 ? 99 : 2});
        }
        assertEquals(0, summarise(accumulator).boost().seconds());
    }

    @Test
    void timesOfDayRunOnPastMidnight() {
        MappedColumn time = new MappedColumn(0, "clock", Channel.TIME, TraceUnit.SECOND, CellKind.TIME_OF_DAY, Origin.NAME);
        TraceAccumulator accumulator = new TraceAccumulator(new ChannelMap(time, MAP.columns()));
        for (int t = 1; t <= 140; t++) {
            boolean work = t > 10 && t <= 130;
            accumulator.row(t + 1, new double[] {(86_350 + t) % 86_400, work ? 70 : 30, work ? 20 : 2, work ? 99 : 2});
        }
        TraceSummary summary = summarise(accumulator);
        assertEquals(120, summary.work().lengthSeconds(), 1e-9);
        assertEquals(0, summary.gaps());
    }

    @Test
    void impossibleNumbersAreMissingAndTold() {
        TraceAccumulator accumulator = stepped(0, 20);
        accumulator.row(200, new double[] {141, -999, 65_535, 2});
        TraceSummary summary = summarise(accumulator);
        assertEquals(List.of(200L, 200L), summary.remarks().stream().map(TraceRemark::line).toList());
        assertTrue(summary.remarks().get(0).text().startsWith("-999 of \"die temperature\""), summary.remarks().toString());
    }

    /** A zero and a height of one row between neighbours that differ are failed readings: levels stay, and the lines are told. */
    @Test
    void loneReadingsAreMissingAndTold() {
        TraceAccumulator accumulator = new TraceAccumulator(MAP);
        for (int t = 1; t <= 200; t++) {
            double power = t == 120 ? 0 : t == 150 || t == 151 ? 160 : t > 10 ? 20 : 2;
            accumulator.row(t + 1, new double[] {t, t == 160 ? 125 : t > 10 ? 70 : 30, power, t > 10 ? 99 : 2});
        }
        TraceSummary summary = summarise(accumulator);
        assertEquals(20, summary.mean(Channel.PACKAGE_POWER).orElseThrow(), 1e-9);
        assertEquals(70, summary.mean(Channel.DIE_TEMPERATURE).orElseThrow(), 1e-9);
        assertEquals(List.of(121L, 161L), summary.remarks().stream().map(TraceRemark::line).toList());
        assertTrue(summary.remarks().get(0).text().endsWith("(and 2 more like it)"), summary.remarks().toString());
    }

    /** Three rows are a peak, and dips that are not zero are pauses of the work: both stay. */
    @Test
    void peaksAndPausesAreNotLoneReadings() {
        TraceAccumulator accumulator = new TraceAccumulator(MAP);
        for (int t = 1; t <= 210; t++) {
            double power = t <= 10 ? 2 : t >= 150 && t < 153 ? 40 : t % 40 == 0 ? 4 : 20;
            accumulator.row(t + 1, new double[] {t, t > 10 ? 70 : 30, power, t > 10 ? 99 : 2});
        }
        TraceSummary summary = summarise(accumulator);
        assertEquals((94 * 20 + 3 * 40 + 3 * 4) / 100.0, summary.mean(Channel.PACKAGE_POWER).orElseThrow(), 1e-9);
        assertEquals(List.of(), summary.remarks());
    }

    @Test
    void aPowerThatNeverChangesIsNoMeasurement() {
        TraceAccumulator accumulator = new TraceAccumulator(MAP);
        for (int t = 1; t <= 140; t++) {
            accumulator.row(t + 1, new double[] {t, t > 10 ? 70 + 0.1 * (t % 3) : 30, 28, t > 10 ? 99 : 2});
        }
        TraceSummary summary = summarise(accumulator);
        assertTrue(summary.level(Channel.PACKAGE_POWER).isEmpty());
        assertEquals("package power never changes: not a sensor, or stuck; it is not used", summary.remarks().get(0).text());
    }

    /** Rows of 3 s whose second row is half rest: the blocks of the work hold nothing of it. */
    @Test
    void aRowThatIsHalfRestIsNoPartOfTheBlocks() {
        TraceAccumulator accumulator = new TraceAccumulator(MAP);
        for (int i = 1; i <= 60; i++) {
            double power = i <= 4 ? 2 : i == 5 ? 11 : 20;
            accumulator.row(i + 1, new double[] {3 * i, i > 4 ? 70 : 30, power, i > 4 ? 99 : 2});
        }
        TraceSummary summary = summarise(accumulator);
        for (double watts : summary.blocks().channels().get(Channel.PACKAGE_POWER)) {
            assertTrue(Double.isNaN(watts) || watts == 20, "a block of " + watts + " W");
        }
        assertEquals(3 * 55.5, summary.work().lengthSeconds(), 1e-6);
    }

    /** Six seconds are missing in which the work began: its start is taken half way. */
    @Test
    void aWorkThatBeganInAGapBeginsHalfWay() {
        TraceAccumulator accumulator = new TraceAccumulator(MAP);
        for (int t = 1; t <= 140; t++) {
            if (t < 8 || t > 13) {
                accumulator.row(t + 1, new double[] {t, t > 10 ? 70 : 30, t > 10 ? 20 : 2, t > 10 ? 99 : 2});
            }
        }
        assertEquals(9, summarise(accumulator).work().startSeconds(), 1e-9); // on the clock of the series, whose first row is 0
    }

    @Test
    void aLogThatBeginsInTheWorkSaysSo() {
        TraceAccumulator accumulator = new TraceAccumulator(MAP);
        for (int t = 1; t <= 140; t++) {
            accumulator.row(t + 1, new double[] {t, t <= 130 ? 70 : 50, t <= 130 ? 20 : 2, t <= 130 ? 99 : 2});
        }
        assertTrue(summarise(accumulator).remarks().get(0).text().startsWith("the log begins in the work"));
    }

    @Test
    void gapsAndStepsBackAreToldWithTheirLines() {
        TraceAccumulator accumulator = stepped(0, 20);
        accumulator.row(300, new double[] {150, 30, 2, 2});
        accumulator.row(301, new double[] {149, 30, 2, 2});
        TraceSummary summary = summarise(accumulator);
        assertEquals(1, summary.gaps());
        assertEquals(List.of(300L, 301L), summary.remarks().stream().map(TraceRemark::line).toList());
    }

    @Test
    void oneMissingRowIsAGapUnlessWholeSecondsMayHideIt() {
        TraceAccumulator fine = new TraceAccumulator(MAP);
        TraceAccumulator whole = new TraceAccumulator(MAP);
        SplittableRandom random = new SplittableRandom(9);
        for (int t = 1; t <= 200; t++) {
            double[] values = {t > 10 ? 71 + random.nextDouble() : 30 + random.nextDouble(), t > 10 ? 20 : 2, t > 10 ? 99 : 2};
            if (t != 120) {
                fine.row(t + 1, new double[] {t + 0.1 * random.nextDouble(), values[0], values[1], values[2]});
            }
            whole.row(t + 1, new double[] {Math.floor(1.2 * t), values[0], values[1], values[2]}); // a row every 1.2 s
        }
        assertEquals(1, summarise(fine).gaps());
        assertEquals(0, summarise(whole).gaps());
    }

    @Test
    void aSensorThatStandsStillIsTold() {
        TraceAccumulator accumulator = new TraceAccumulator(MAP);
        SplittableRandom random = new SplittableRandom(5);
        for (int t = 1; t <= 200; t++) {
            double die = t > 60 && t < 110 ? 71.3 : (t > 10 ? 71 : 30) + random.nextDouble();
            accumulator.row(t + 1, new double[] {t, die, t > 10 ? 20 : 2, t > 10 ? 99 : 2});
        }
        List<TraceRemark> remarks = summarise(accumulator).remarks();
        assertEquals(62, remarks.get(0).line());
        assertTrue(remarks.get(0).text().contains("stands still at 71.3"), remarks.toString());
    }

    @Test
    void whatStillMovesIsSaid() {
        TraceAccumulator accumulator = new TraceAccumulator(MAP);
        for (int t = 1; t <= 200; t++) {
            accumulator.row(t + 1, new double[] {t, t > 10 ? 50 + 0.1 * t : 30, t > 10 ? 20 : 2, t > 10 ? 99 : 2});
        }
        TraceSummary summary = summarise(accumulator);
        assertFalse(summary.isSteady());
        assertTrue(summary.unsteady().get(0).startsWith("die temperature still rose by 4."), summary.unsteady().toString());
    }

    /** A log of two million rows keeps its means; a mean of means over equal counts is the mean. */
    @Test
    void aVeryLongLogIsKeptAsMeansInConstantMemory() {
        TraceAccumulator accumulator = new TraceAccumulator(MAP);
        int rows = 2_000_000;
        for (int t = 1; t <= rows; t++) {
            boolean work = t > 10_000;
            accumulator.row(t + 1, new double[] {0.01 * t, work ? 70 + t % 2 : 30, work ? 20 + 0.5 * (t % 4) : 2, work ? 99 : 2});
        }
        TraceSummary summary = summarise(accumulator);
        assertEquals(rows, summary.rows());
        assertEquals(20.75, summary.mean(Channel.PACKAGE_POWER).orElseThrow(), 1e-6);
        assertEquals(0.01, summary.samplingSeconds(), 1e-9);
        assertEquals(0, summary.gaps());
    }

    /**
     * The variance of a mean of a first-order autoregressive series is about {@code s^2 / n * (1 + r) / (1 - r)} (a result of time series
     * analysis found in every textbook; from memory). The mean of 400 simulated series must scatter as the standard error says.
     */
    @Test
    void theStandardErrorKnowsThatNeighboursResembleEachOther() {
        SplittableRandom random = new SplittableRandom(8);
        double squares = 0;
        double errors = 0;
        int repetitions = 400;
        for (int k = 0; k < repetitions; k++) {
            TraceAccumulator accumulator = new TraceAccumulator(MAP);
            double noise = 0;
            for (int t = 1; t <= 600; t++) {
                noise = 0.7 * noise + random.nextGaussian();
                accumulator.row(t + 1, new double[] {t, 50, 100 + noise, 99});
            }
            Level level = LevelFinder.of(accumulator.series(), Channel.PACKAGE_POWER, 0, 600).orElseThrow();
            squares += (level.mean() - 100) * (level.mean() - 100);
            errors += level.standardError() * level.standardError();
        }
        assertEquals(1, Math.sqrt(errors / squares), 0.12); // 400 repetitions: 3.5 % standard error of the ratio, plus the bias of r
    }
}
