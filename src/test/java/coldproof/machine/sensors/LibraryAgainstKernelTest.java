package coldproof.machine.sensors;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.trace.Channel;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;

/** The real library and the kernel's files, side by side on the machine that runs the tests. */
@EnabledOnOs(OS.LINUX)
class LibraryAgainstKernelTest {
    private static final Path ROOT = Path.of("/");

    private static FoundSensors kernel() {
        return new LinuxSensors(ROOT).find();
    }

    private static DoubleStream read(FoundSensors found, Channel channel) {
        return found.sensors().stream().filter(sensor -> sensor.channel() == channel).mapToDouble(sensor -> sensor.read(0));
    }

    /** Both read the same counters; between the two readings a few ticks of 10 ms may go by, of some 100 a second and processor. */
    @Test
    void utilisationIsTheSame() throws LibraryUnavailable, InterruptedException {
        SystemLibrary library = LibraryLoader.open();
        Utilisation files = new Utilisation(ROOT.resolve("proc/stat"));
        LoadShare share = new LoadShare();
        files.read(0);
        share.between(busyAndAll(library.loadTicks()));
        double byFiles = Double.NaN;
        double byLibrary = Double.NaN;
        for (int tries = 0; tries < 5 && !(Math.abs(byFiles - byLibrary) < 5); tries++) { // a garbage collection between the two moves one of them
            Thread.sleep(600);
            byFiles = files.read(1);
            byLibrary = share.between(busyAndAll(library.loadTicks()));
        }
        assertEquals(byFiles, byLibrary, 5);
    }

    private static long[] busyAndAll(long[] ticks) {
        long all = Arrays.stream(ticks).sum();
        return new long[] {all - ticks[LoadShare.IDLE] - ticks[LoadShare.WAITS], all};
    }

    /** Where there is a frequency driver both show its files. Where there is none, the library shows the table of processors, and so do we here. */
    @Test
    void theClockIsWithinTheRangeOfTheKernels() throws LibraryUnavailable, IOException {
        double[] kernel = read(kernel(), Channel.CLOCK).toArray();
        if (kernel.length == 0) {
            kernel = Files.readAllLines(ROOT.resolve("proc/cpuinfo")).stream().filter(line -> line.startsWith("cpu MHz"))
                    .mapToDouble(line -> Double.parseDouble(line.substring(line.indexOf(':') + 1).strip())).toArray();
        }
        double[] library = Arrays.stream(LibraryLoader.open().clockHertz()).filter(hertz -> hertz > 0).mapToDouble(hertz -> hertz / 1e6).toArray();
        assertEquals(kernel.length > 0, library.length > 0);
        double highest = Arrays.stream(kernel).max().orElse(0);
        // A clock moves between two readings: by as much as from idle to boost, which is a factor of ten at most (common practice).
        assertTrue(Arrays.stream(library).allMatch(megahertz -> megahertz > highest / 10.5 && megahertz < highest * 10.5), () -> Arrays.toString(library));
    }

    @Test
    void theBatteryIsTheSame() throws LibraryUnavailable {
        FoundSensors kernel = kernel();
        List<Double> byFiles = read(kernel, Channel.BATTERY_CHARGE).boxed().toList();
        List<Double> byLibrary = LibraryLoader.open().batteries().stream().filter(LibrarySensors::isThere).map(battery -> 100 * battery.chargeShare()).toList();
        assertEquals(byFiles.size(), byLibrary.size());
        for (int i = 0; i < byFiles.size(); i++) {
            assertEquals(byFiles.get(i), byLibrary.get(i), 1.01); // both in whole percent, read one after the other
        }
    }
}
