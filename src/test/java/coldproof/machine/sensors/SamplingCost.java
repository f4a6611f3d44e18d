package coldproof.machine.sensors;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * Measures what sampling takes: processor time of the whole process, all its threads, while a log is written once a second. Run by
 * {@code src/test/speed/sensors.sh}.
 */
final class SamplingCost {
    private SamplingCost() {}

    /**
     * Arguments: {@code nothing}, {@code files} or {@code library}; seconds to sample; the folder that holds {@code sys} and {@code proc}.
     *
     * @throws IOException if the log cannot be written
     */
    public static void main(String[] words) throws IOException, InterruptedException, LibraryUnavailable {
        int seconds = Integer.parseInt(words[1]);
        OperatingSystemMXBean process = ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);
        long beforeOpening = process.getProcessCpuTime();
        FoundSensors found = found(words[0], Path.of(words[2]));
        double opening = (process.getProcessCpuTime() - beforeOpening) / 1e6;
        Path file = Files.createTempDirectory("sampling").resolve("log.csv");
        long before = process.getProcessCpuTime();
        long began = System.nanoTime();
        SensorLog log = SensorLog.start(found, file, 1);
        Thread.sleep(1000L * seconds);
        SensorLog.Report report = log.finish();
        double cpu = (process.getProcessCpuTime() - before) / 1e9;
        double elapsed = (System.nanoTime() - began) / 1e9;
        System.out.printf(Locale.ROOT, "%-8s  %3d sensors  opening %4.0f ms   %6.2f s/h  %.3f %% of one processor  (own figure of the log: at most %.3f %%)%n", words[0],
                found.sensors().size(), opening, 3600 * cpu / elapsed, 100 * cpu / elapsed, 100 * report.costShare());
        Files.delete(file);
        Files.delete(file.getParent());
    }

    private static FoundSensors found(String kind, Path root) throws LibraryUnavailable {
        return switch (kind) {
            case "files" -> new LinuxSensors(root).find();
            case "library" -> new LibrarySensors(new Everything(LibraryLoader.open()), HostSystem.MACOS.measured()).find();
            default -> new FoundSensors(List.of(), List.of(), PowerState.UNKNOWN);
        };
    }

    /** Asks the library for everything, and goes on asking where the machine has nothing. */
    private record Everything(SystemLibrary library) implements SystemLibrary {
        @Override
        public double dieCelsius() {
            return Math.max(50, library.dieCelsius());
        }

        @Override
        public int[] fanRpm() {
            return library.fanRpm().length == 0 ? new int[] {2000} : library.fanRpm();
        }

        @Override
        public long[] clockHertz() {
            return library.clockHertz();
        }

        @Override
        public long[] loadTicks() {
            return library.loadTicks();
        }

        @Override
        public List<Battery> batteries() {
            List<Battery> there = library.batteries();
            return there.isEmpty() ? List.of(FakeLibrary.discharging(0.5)) : there;
        }
    }
}
