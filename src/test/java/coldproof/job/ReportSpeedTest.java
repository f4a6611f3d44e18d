package coldproof.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A large study: 500 trials with a trace of 600 rows each. The folder may be kept with -Dcoldproof.keep=DIR to time the whole program. */
@Tag("benchmark")
class ReportSpeedTest {
    private static final int SECONDS = 600;

    @TempDir
    Path folder;

    private static String trace() {
        StringBuilder text = new StringBuilder("time s,package power W,clock MHz,die temperature C,fan rpm,utilisation %,ambient C\n");
        for (int i = 0; i < SECONDS; i++) {
            double boost = i < 30 ? 1.4 : 1;
            text.append(String.format(Locale.ROOT, "%d,%.2f,%.0f,%.1f,%d,100,21.0%n", i, 36 * boost + 0.3 * Math.sin(i), 3400 * boost + 20 * Math.sin(0.7 * i),
                    80 - 50 * Math.exp(-i / 60.0), 2500));
        }
        return text.toString();
    }

    @Test
    void aReportOfFiveHundredTrialsTakesSeconds() throws Exception {
        String plan = ReadyPlans.text("chilled-air").replace("sessions: {room: 4, chilled: 4}", "sessions: {room: 25, chilled: 25}").replace("trials per condition: 2",
                "trials per condition: 5").replace("  outdoors at most: 5 h\n", "");
        Path kept = Optional.ofNullable(System.getProperty("coldproof.keep")).map(Path::of).orElse(folder.resolve("large"));
        Path study = BenchFixture.study(kept, plan, BenchFixture.gain("ambient", "chilled", 4), Optional.of(trace()));
        AtomicInteger read = new AtomicInteger();
        long began = System.nanoTime();
        Path file = ReportJob.write(new ReportJob.Request(study, ReportJob.Format.HTML, Optional.empty(), false), read::set);
        double seconds = (System.nanoTime() - began) / 1e9;
        System.out.printf(Locale.ROOT, "report of 500 trials with 500 traces: %.1f s, page %.1f MB%n", seconds, Files.size(file) / 1e6);
        assertEquals(500, read.get());
        assertTrue(seconds < 30, seconds + " s");
    }
}
