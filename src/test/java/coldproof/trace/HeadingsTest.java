package coldproof.trace;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** Headings of many loggers, in several languages: each says what its column is, or that it is of no use. */
class HeadingsTest {
    private static final int ROWS = 120;
    private static final int START = 20;

    private final SampledColumns columns = new SampledColumns(ROWS);

    private void column(String name, IntToDoubleFunction values) {
        columns.add(name, values);
    }

    private String channelOf(int column) {
        return ChannelGuess.of(columns.all(), List.of()).orElseThrow().columns().stream().filter(mapped -> mapped.index() == column)
                .map(mapped -> mapped.channel().label()).findFirst().orElse("none");
    }

    /** A log of time, a die that heats up and the column asked about, which jumps when the work begins: its words must decide. */
    @ParameterizedTest
    @CsvFileSource(resources = "/coldproof/trace/headings.csv", delimiter = '|')
    void aHeadingSaysWhatItsColumnIs(String heading, String channel) {
        column("t [s]", i -> i);
        column("Die [°C]", i -> i < START ? 30 : 90 - 60 * Math.exp((START - i) / 4.0));
        column(heading, i -> (i < START ? 300 : 1500) + i % 3);
        assertEquals(channel, channelOf(2), heading);
    }

    @Test
    void theLowestAndHighestSoFarAreNotTheReading() {
        column("Time", i -> i);
        column("CPU temp [°C]", i -> i < START ? 30 : 80);
        column("CPU temp max [°C]", i -> i < START ? 45 : 96);
        column("CPU temp avg [°C]", i -> i < START ? 30 : 60);
        column("Core max [°C]", i -> i < START ? 31 : 81);
        assertEquals(List.of("die temperature", "none", "none", "die temperature"), List.of(channelOf(1), channelOf(2), channelOf(3), channelOf(4)));
    }

    @Test
    void theProcessorThatStandsIdleIsLeftOut() {
        column("Time", i -> i);
        column("CPU usage [%]", i -> i < START ? 4 : 6);
        column("GPU usage [%]", i -> i < START ? 2 : 99);
        column("CPU clock [MHz]", i -> 4100 + i % 7);
        column("GPU clock [MHz]", i -> i < START ? 300 : 1900);
        column("CPU power [W]", i -> i < START ? 4 : 9);
        column("GPU power [W]", i -> i < START ? 6 : 110);
        assertEquals(List.of("none", "utilisation", "none", "clock", "none", "package power"),
                List.of(channelOf(1), channelOf(2), channelOf(3), channelOf(4), channelOf(5), channelOf(6)));
    }

    /** The column called after a die does not follow the work; one that nobody named does. */
    @Test
    void aDieSensorThatDoesNotHeatUpIsNotTheOnlyOne() {
        column("Time [s]", i -> i);
        column("Temperature [°C]", i -> i < START ? 30 : 92 - 60 * Math.exp((START - i) / 4.0));
        column("GPU temperature [°C]", i -> 36 + 0.02 * i);
        column("Load [%]", i -> i < START ? 2 : 100);
        assertEquals("die temperature", channelOf(1));
    }

    @Test
    void allTemperaturesWithoutAUnitAreInTheUnitOfTheHottest() {
        column("Time", i -> i);
        column("CPU temp", i -> i < START ? 90 : 190);
        column("Room temp", i -> 70 + i % 2);
        List<ChannelMap.MappedColumn> mapped = ChannelGuess.of(columns.all(), List.of()).orElseThrow().columns();
        assertEquals(List.of(TraceUnit.FAHRENHEIT, TraceUnit.FAHRENHEIT), mapped.stream().map(ChannelMap.MappedColumn::unit).toList());
    }

    /** A part draws nearly in step with its package; a whole device draws more by what does not care for the work. */
    @ParameterizedTest
    @CsvSource({"2.4, 55, package power", "11, 63, system power"})
    void aLargerPowerIsTheDeviceOnlyWhereMuchOfTheDifferenceIsThereAtRest(double rest, double work, String channel) {
        column("Time", i -> i);
        column("Power [W]", i -> (i < START ? rest : work) + 0.1 * (i % 2));
        column("Core power [W]", i -> (i < START ? 2 : 45) + 0.1 * (i % 3));
        assertEquals(channel, channelOf(1));
    }
}
