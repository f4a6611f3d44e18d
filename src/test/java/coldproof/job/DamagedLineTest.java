package coldproof.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.trace.Channel;
import coldproof.trace.TraceRemark;
import coldproof.trace.TraceSummary;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A log with one bad line: whichever line it is, the problem names it, and the levels stay. */
class DamagedLineTest {
    private static final int ROWS = 160;
    private static final int START = 10;
    private static final String HEADING = "Time [s],Die [°C],Package power [W],Clock [MHz],Utilisation [%]";

    @TempDir
    Path folder;

    /** What happens to a line of five cells. */
    enum Damage {
        WORD_FOR_A_NUMBER(line -> line.replaceFirst(",[^,]*,", ",oops,")),
        SENTINEL(line -> line.replaceFirst(",[^,]*,", ",-999,")),
        TOO_LARGE(line -> line.replaceFirst(",[^,]*,", ",65535,")),
        TWO_POINTS(line -> line.replaceFirst(",[^,]*,", ",7.0.3,")),
        TIME_IS_NO_TIME(line -> line.replaceFirst("^[^,]*", "??")),
        TIME_GOES_BACK(line -> line.replaceFirst("^[^,]*", "0.5")),
        RUBBISH(line -> "\u0000\u0007 not a line of this log"),
        HEADING_AGAIN(line -> HEADING),
        OPEN_QUOTE(line -> line.replaceFirst(",", ",\"")),
        TIME_ALONE(line -> line.replaceFirst(",.*", ",,,,"));

        private final UnaryOperator<String> change;

        Damage(UnaryOperator<String> change) {
            this.change = change;
        }
    }

    private static List<String> log() {
        List<String> lines = new ArrayList<>(List.of(HEADING));
        for (int t = 1; t <= ROWS; t++) {
            boolean work = t > START;
            lines.add(String.format(Locale.ROOT, "%d,%.1f,%.1f,%d,%d", t, work ? 70.0 + t % 2 : 30, work ? 20.0 : 2, work ? 3000 + t % 5 : 900, work ? 99 : 2));
        }
        return lines;
    }

    private TraceSummary read(String text) throws IOException {
        return TraceJob.run(Files.writeString(folder.resolve("log.csv"), text), List.of(), OptionalDouble.empty(), read -> {}).summary();
    }

    @ParameterizedTest
    @EnumSource(Damage.class)
    void itsLineIsNamedAndTheRestStays(Damage damage) throws IOException {
        SplittableRandom random = new SplittableRandom(damage.ordinal());
        for (int k = 0; k < 25; k++) {
            List<String> lines = log();
            int bad = random.nextInt(20, ROWS - 1);
            lines.set(bad, damage.change.apply(lines.get(bad)));
            TraceSummary summary = read(String.join("\n", lines) + "\n");
            List<Long> told = summary.remarks().stream().map(TraceRemark::line).toList();
            assertTrue(told.contains(bad + 1L), () -> damage + " in line " + (bad + 1) + ": " + summary.remarks());
            assertEquals(20, summary.mean(Channel.PACKAGE_POWER).orElseThrow(), 1e-9, damage + " in line " + (bad + 1));
            assertEquals(70.5, summary.mean(Channel.DIE_TEMPERATURE).orElseThrow(), 0.02, damage + " in line " + (bad + 1));
        }
    }

    /** A logger whose battery died leaves half a line: its last number may have lost digits, so the line is left out and told. */
    @Test
    void aLastLineThatWasCutOffIsLeftOut() throws IOException {
        List<String> lines = log();
        String whole = String.join("\n", lines);
        TraceSummary cut = read(whole + "\n161,70.0,2");
        assertEquals(20, cut.mean(Channel.PACKAGE_POWER).orElseThrow(), 1e-9);
        assertEquals(new TraceRemark(ROWS + 2, "this line is cut off: its last number may not be whole"), cut.remarks().get(0));
        assertEquals(List.of(), read(whole).remarks());
    }
}
