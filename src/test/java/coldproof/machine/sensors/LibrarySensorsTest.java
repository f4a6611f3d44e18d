package coldproof.machine.sensors;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.trace.Channel;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What an absent sensor looks like, after the library's own documentation of its answers: a temperature of 0 or NaN, an empty array of fans or a
 * speed of 0, a frequency of -1, a battery temperature of 0 "if unknown".
 */
class LibrarySensorsTest {
    @TempDir
    Path folder;

    private final FakeLibrary library = new FakeLibrary();

    private FoundSensors find() {
        return new LibrarySensors(library, EnumSet.complementOf(EnumSet.of(Channel.TIME))).find();
    }

    private Optional<Sensor> sensor(FoundSensors found, Channel channel) {
        return found.sensors().stream().filter(sensor -> sensor.channel() == channel).findFirst();
    }

    private LiveSensors.Snapshot live() {
        return MachineSensors.of(folder, HostSystem.MACOS, EnumSet.allOf(Channel.class), () -> library, 1).live().read();
    }

    @ParameterizedTest(name = "die at {0}")
    @ValueSource(doubles = {0.0, -0.0, Double.NaN, -273.15, -1, 314.2, 48_000, Double.POSITIVE_INFINITY})
    void aDieTemperatureThatIsNoneIsNotFound(double absent) {
        library.die = absent;
        assertTrue(sensor(find(), Channel.DIE_TEMPERATURE).isEmpty());
    }

    @Test
    void aDieThatFallsToZeroIsAMissingValue() {
        library.die = 61.5;
        Sensor die = sensor(find(), Channel.DIE_TEMPERATURE).orElseThrow();
        assertEquals(61.5, die.read(0));
        library.die = 0;
        assertTrue(Double.isNaN(die.read(1)));
        library.die = 60;
        assertEquals(60, die.read(2));
    }

    @Test
    void noFansAreNoColumnsAndAFanAtZeroIsSaid() {
        assertTrue(sensor(find(), Channel.FAN).isEmpty());
        library.fans = new int[] {0, 2400};
        List<Sensor> fans = find().sensors().stream().filter(sensor -> sensor.channel() == Channel.FAN).toList();
        assertEquals(2, fans.size());
        assertTrue(Double.isNaN(fans.get(0).read(0)));
        assertEquals(2400, fans.get(1).read(0));
        assertTrue(fans.get(0).remark().orElseThrow().contains("was 0 throughout"));
        library.fans = new int[] {};
        assertTrue(Double.isNaN(fans.get(1).read(1)), "a fan that went away");
    }

    @Test
    void aClockThatNeverMovesIsNominal() {
        library.clocks = new long[] {-1, -1};
        assertTrue(sensor(find(), Channel.CLOCK).isEmpty());
        library.clocks = new long[] {2_600_000_000L, 2_600_000_000L};
        Sensor clock = sensor(find(), Channel.CLOCK).orElseThrow();
        assertTrue(Double.isNaN(clock.read(0)) && Double.isNaN(clock.read(1)));
        assertEquals("clock mean of the processors [MHz] was 2600 throughout: a nominal figure, as in a virtual machine, or a clock that never moved; not recorded",
                clock.remark().orElseThrow());
        library.clocks = new long[] {3_000_000_000L, 2_600_000_000L};
        assertEquals(2800, clock.read(2));
        library.clocks = new long[] {2_600_000_000L, 0};
        assertEquals(2600, clock.read(3), "a processor without a figure is left out of the mean");
    }

    @Test
    void utilisationIsTheShareBetweenTwoReadings() {
        library.ticks = new long[] {1000, 0, 500, 8000, 500, 0, 0, 0};
        Sensor share = sensor(find(), Channel.UTILISATION).orElseThrow();
        assertTrue(Double.isNaN(share.read(0)));
        library.ticks = new long[] {1750, 0, 500, 8150, 600, 0, 0, 0};
        assertEquals(75, share.read(1), 1e-12);
        assertTrue(Double.isNaN(share.read(2)), "no time went by");
    }

    @Test
    void aBatteryThatIsNotThereIsNotThere() {
        library.batteries = List.of(FakeLibrary.absent());
        FoundSensors found = find();
        assertFalse(found.channels().contains(Channel.BATTERY_CHARGE) || found.channels().contains(Channel.SYSTEM_POWER));
        assertEquals(Optional.empty(), found.power().plugged());
        assertEquals(Optional.empty(), found.power().charging());
    }

    @Test
    void aBatteryThatIsPulledOutIsAMissingValue() {
        library.batteries = List.of(FakeLibrary.discharging(0.83));
        FoundSensors found = find();
        Sensor charge = sensor(found, Channel.BATTERY_CHARGE).orElseThrow();
        Sensor power = sensor(found, Channel.SYSTEM_POWER).orElseThrow();
        assertEquals(83, charge.read(0), 1e-9);
        assertEquals(12, power.read(0));
        assertEquals(Optional.of(false), found.power().plugged());
        library.batteries = List.of(FakeLibrary.charging(0.83));
        assertTrue(Double.isNaN(power.read(1)), "what goes into the battery is not what the device draws");
        assertEquals(Optional.of(true), found.power().plugged());
        library.batteries = List.of();
        assertTrue(Double.isNaN(charge.read(2)));
    }

    @ParameterizedTest(name = "a charge of {0}")
    @ValueSource(doubles = {0, -1, 83, Double.NaN})
    void aChargeInAnotherUnitOrNoneIsNotFound(double share) {
        library.batteries = List.of(FakeLibrary.discharging(share));
        assertTrue(sensor(find(), Channel.BATTERY_CHARGE).isEmpty());
    }

    @Test
    void powerInUnitsOfTheSystemsOwnIsNoPower() {
        library.batteries = List.of(new SystemLibrary.Battery("Pack", 0.5, -12_000, true, 0, 100, false, false, true));
        FoundSensors found = find();
        assertEquals(Set.of(Channel.BATTERY_CHARGE, Channel.UTILISATION), found.channels(), "a temperature of 0 is none either");
    }

    @Test
    void aLibraryThatThrowsIsSaidAndRecordingGoesOn() throws IOException {
        library.die = 55;
        library.fans = new int[] {1500};
        MachineSensors sensors = MachineSensors.of(folder, HostSystem.MACOS, EnumSet.allOf(Channel.class), () -> library, 1);
        SensorLog log = sensors.log(folder.resolve("log.csv"));
        library.thrown = new IllegalStateException("the system\nsaid no");
        SensorLog.Report report = log.finish();
        assertTrue(report.missing().stream().anyMatch(sentence -> sentence.contains("(the system)")), report.missing()::toString);
        assertTrue(sensors.live().read().dieCelsius().isEmpty());
        assertEquals(Optional.empty(), sensors.live().read().charging());
    }

    @Test
    void aLibraryThatThrowsAtOnceIsSaid() throws IOException {
        library.thrown = new IllegalStateException("no answer");
        SensorLog.Report report = MachineSensors.of(folder, HostSystem.MACOS, EnumSet.allOf(Channel.class), () -> library, 1).log(folder.resolve("log.csv")).finish();
        assertEquals(List.of(), report.columns());
        assertTrue(report.missing().contains("no fan: the system did not answer (no answer)"), report.missing()::toString);
    }

    @Test
    void aLibraryThatCannotBeLoadedIsSaidInOneLine() throws IOException {
        LibraryDoor shut = () -> {
            throw new LibraryUnavailable("/tmp may not hold programs", new UnsatisfiedLinkError());
        };
        SensorLog.Report report = MachineSensors.of(folder, HostSystem.WINDOWS, EnumSet.allOf(Channel.class), shut, 1).log(folder.resolve("log.csv")).finish();
        assertEquals("the library that asks the system cannot be used here (/tmp may not hold programs)", report.missing().get(0));
    }

    @Test
    void theLibraryIsNotLoadedWhereTheKernelGivesTheClock() throws IOException {
        Path policy = folder.resolve("sys/devices/system/cpu/cpufreq/policy0");
        Files.createDirectories(policy);
        Files.writeString(policy.resolve("scaling_cur_freq"), "3200000\n");
        LibraryDoor never = () -> {
            throw new AssertionError("it was opened");
        };
        MachineSensors.of(folder, HostSystem.LINUX, EnumSet.allOf(Channel.class), never, 1);
    }

    /** On Windows the library's temperature, fan and clock are no measurements: zones of the firmware, desired speeds, a share of the nominal clock. */
    @Test
    void onlyWhatIsMeasuredOnASystemIsTaken() throws IOException {
        library.die = 28;
        library.fans = new int[] {2000};
        library.clocks = new long[] {2_600_000_000L};
        library.batteries = List.of(FakeLibrary.discharging(0.5));
        SensorLog.Report report = MachineSensors.of(folder, HostSystem.WINDOWS, EnumSet.allOf(Channel.class), () -> library, 1).log(folder.resolve("log.csv")).finish();
        assertEquals(List.of("battery charge Pack [%]", "battery temperature Pack [°C]", "battery power Pack [W]"), report.columns());
    }

    @Test
    void theAbortLimitsAreWatchedThroughTheLibraryToo() {
        library.die = 97;
        library.batteries = List.of(FakeLibrary.charging(0.12));
        LiveSensors.Snapshot now = live();
        assertEquals(OptionalDouble.of(97), now.dieCelsius());
        assertEquals(OptionalDouble.of(12), now.batteryPercent());
        assertEquals(OptionalDouble.of(24.5), now.cellCelsius());
        assertEquals(Optional.of(true), now.charging());
    }

    @Test
    void systemsAreKnownByTheNamesJavaGivesThem() {
        assertEquals(HostSystem.LINUX, HostSystem.named("Linux"));
        assertEquals(HostSystem.MACOS, HostSystem.named("Mac OS X"));
        assertEquals(HostSystem.WINDOWS, HostSystem.named("Windows 11"));
        assertEquals(HostSystem.OTHER, HostSystem.named("FreeBSD"));
    }
}
