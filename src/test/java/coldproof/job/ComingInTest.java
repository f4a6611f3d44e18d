package coldproof.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.physics.DeviceClass;
import coldproof.quantity.Refused;
import coldproof.reason.safety.Reading;
import coldproof.reason.safety.StudySafety;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ComingInTest {
    private static final StudySafety UNCHANGED = StudySafety.unchanged(SafetyRules.bundled());

    @TempDir
    Path folder;

    /** A device warming from -6 to 21 °C with these time constants of battery and board, in s; sensors good to 0.05 K. Simulated. */
    private Path log(String name, double battery, double board, int seconds) throws IOException {
        SplittableRandom random = new SplittableRandom(7);
        StringBuilder text = new StringBuilder("time s,battery temperature °C,board temperature °C\n");
        for (int t = 0; t <= seconds; t += 30) {
            text.append(String.format(Locale.ROOT, "%d,%.2f,%.2f%n", t, 21 - 27 * Math.exp(-t / battery) + 0.1 * (random.nextDouble() - 0.5),
                    21 - 27 * Math.exp(-t / board) + 0.1 * (random.nextDouble() - 0.5)));
        }
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        return Files.writeString(file, text);
    }

    @Test
    void theSlowestPartOfALogGivesTheTimeConstant() throws IOException {
        ComingIn in = ComingIn.of(UNCHANGED, Optional.empty(), List.of(log("in.csv", 1800, 900, 7200)));
        assertTrue(in.timeConstant().measured());
        assertEquals(1800, in.timeConstant().likelySeconds(), 36); // 2 %: 0.05 K on 27 K over four time constants
        assertTrue(in.timeConstant().lowSeconds() < 1800 && 1800 < in.timeConstant().highSeconds());
        assertTrue(in.remarks().get(0).contains("battery temperature"), in.remarks()::toString);
    }

    @Test
    void aStudysOwnLogsAreFound() throws IOException {
        log("traces/coming-in-1.csv", 1200, 600, 7200);
        log("traces/coming-in-2.csv", 1500, 600, 7200);
        log("traces/trial-1.csv", 4000, 4000, 20_000);
        ComingIn in = ComingIn.of(UNCHANGED, Optional.of(folder), List.of());
        assertEquals(1500, in.timeConstant().likelySeconds(), 30);
        assertEquals(2, in.remarks().size());
    }

    @Test
    void aLogThatEndsTooEarlyIsSaidAndTheClassUsed() throws IOException {
        ComingIn in = ComingIn.of(UNCHANGED, Optional.empty(), List.of(log("in.csv", 9000, 9000, 240)));
        assertEquals(DeviceClass.LAPTOP.timeConstant(), in.timeConstant());
        assertTrue(in.remarks().get(0).contains("tells no time constant"), in.remarks()::toString);
    }

    @Test
    void aNamedLogThatIsNotThereIsRefused() {
        assertThrows(Refused.class, () -> ComingIn.of(UNCHANGED, Optional.empty(), List.of(folder.resolve("none.csv"))));
    }

    @Test
    void aBrokenLogOfTheStudyIsOnlyRemarkedOn() throws IOException {
        Files.createDirectories(folder.resolve("traces"));
        Files.writeString(folder.resolve("traces/coming-in.csv"), "no log at all\n");
        ComingIn in = ComingIn.of(UNCHANGED, Optional.of(folder), List.of());
        assertFalse(in.timeConstant().measured());
        assertEquals(1, in.remarks().size());
    }

    /** ln(30 / 9.39) = 1.162 time constants of 30 min from -9 °C to 3 K above a dew point of 8.61 °C in 21 °C: 34.8 min. */
    @Test
    void theCautionCardUsesIt() throws IOException {
        Taken[] scene = {new Taken(Reading.AIR, "--air", "-9C"), new Taken(Reading.ROOM, "--indoors", "21C"), new Taken(Reading.ROOM_HUMIDITY, "--indoor-humidity", "45%")};
        CautionJob.Request request = new CautionJob.Request(List.of(scene), Optional.empty(), Optional.empty(), Optional.empty(),
                List.of(log("in.csv", 1800, 900, 7200)));
        assertEquals(34.8, CautionJob.ofReadings(request, Instant.EPOCH).card().rewarm().orElseThrow().likelyMinutes(), 1);
    }
}
