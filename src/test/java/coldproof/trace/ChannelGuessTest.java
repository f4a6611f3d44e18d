package coldproof.trace;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.trace.ChannelMap.MappedColumn;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChannelGuessTest {
    private static final int ROWS = 200;
    private static final int START = 20;

    private final SampledColumns columns = new SampledColumns(ROWS);

    private void column(String name, IntToDoubleFunction values) {
        columns.add(name, values);
    }

    private static double jump(int i, double rest, double work) {
        return (i < START ? rest : work) * (1 + 0.003 * Math.sin(7.3 * i));
    }

    private static double rise(int i, double from, double to, double seconds) {
        return i < START ? from : to + (from - to) * Math.exp(-(i - START) / seconds);
    }

    private String guessed(ChannelGuess.Setting... settings) {
        ChannelMap map = ChannelGuess.of(columns.all(), List.of(settings)).orElseThrow();
        return map.columns().stream().map(column -> column.index() + " " + column.channel().label()).collect(Collectors.joining(", "));
    }

    @Test
    void namesThatSayNothingAreToldApartByTheirValues() {
        column("c0", i -> i);
        column("Temperature [°C]", i -> 21 + 0.1 * (i % 2));
        column("Temperature [°C]", i -> rise(i, 25, 40, 60));
        column("Temperature [°C]", i -> rise(i, 30, 90, 4));
        column("Temperature [°C]", i -> rise(i, 24, 32, 90));
        column("Power [W]", i -> jump(i, 12, 60));
        column("Power [W]", i -> jump(i, 3, 45));
        column("A [%]", i -> 95 - i / 100);
        column("B [%]", i -> jump(i, 3, 99));
        assertEquals("1 ambient air, 2 board temperature, 3 die temperature, 4 surface temperature, 5 system power, 6 package power, "
                + "7 battery charge, 8 utilisation", guessed());
    }

    @Test
    void theOrderOfTheColumnsDoesNotMatter() {
        column("Power [W]", i -> jump(i, 3, 45));
        column("x [%]", i -> jump(i, 3, 99));
        column("Temperature [°C]", i -> rise(i, 30, 90, 4));
        column("when", i -> 100 + 0.5 * i);
        column("Temperature [°C]", i -> 21 + 0.1 * (i % 2));
        assertEquals("0 package power, 1 utilisation, 2 die temperature, 4 ambient air", guessed());
        assertEquals("when", ChannelGuess.of(columns.all(), List.of()).orElseThrow().time().name());
    }

    @Test
    void limitsTargetsAndOtherClocksAreNotTaken() {
        column("time", i -> i);
        column("Core clock [MHz]", i -> jump(i, 900, 4000));
        column("Memory clock [MHz]", i -> 1600);
        column("Power limit [W]", i -> 28);
        column("Package power [W]", i -> jump(i, 2, 28));
        column("Battery power [W]", i -> jump(i, 5, 40));
        assertEquals("1 clock, 4 package power", guessed());
    }

    @Test
    void aSettingIsNeverOverruled() {
        column("time", i -> i);
        column("Package power [W]", i -> jump(i, 2, 28));
        column("odd", i -> jump(i, 2000, 15_000));
        assertEquals("2 package power", guessed(new ChannelGuess.Setting(2, Channel.PACKAGE_POWER, Optional.empty())));
        MappedColumn set = ChannelGuess.of(columns.all(), List.of(new ChannelGuess.Setting(2, Channel.PACKAGE_POWER, Optional.empty()))).orElseThrow().columns().get(0);
        assertEquals(TraceUnit.MILLIWATT, set.unit());
    }

    @Test
    void withoutATimeThereIsNoMap() {
        column("Package power [W]", i -> jump(i, 2, 28));
        assertTrue(ChannelGuess.of(columns.all(), List.of()).isEmpty());
    }

    @ParameterizedTest
    @CsvSource({
        "Die temperature 1 (°C), °C", "die_temp_2_c, °C", "Die temp [°F], °F", "Clock / GHz, GHz", "package_power_w, W", "Leistung [mW], mW",
        "Fan speed [rpm], rpm", "Drehzahl (1/min), rpm", "utilisation_pct, %", "Time / ms, ms", "CPU Freq MHz, MHz", "Die 1, ''", "T1, ''", "P, ''"
    })
    void unitsAreFoundInHeadings(String heading, String symbol) {
        assertEquals(symbol, new HeadingWords(heading).unit().map(TraceUnit::symbol).orElse(""));
    }

    @ParameterizedTest
    @CsvSource({
        "1927632948997, 1000, ms", "1927632948, 1, s", "1927632948997123, 1000000, µs", "0, 1, s", "0, 1000, ms", "45678.5, 0.0000115740740740, d"
    })
    void theUnitOfTimeIsToldByItsSize(double first, double step, String symbol) {
        column("t", i -> first + i * step);
        assertEquals(symbol, ChannelGuess.of(columns.all(), List.of()).orElseThrow().time().unit().symbol());
    }
}
