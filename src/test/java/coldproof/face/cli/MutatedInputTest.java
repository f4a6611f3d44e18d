package coldproof.face.cli;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.job.ReadyPlans;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Plans, journals and answers changed by chance and malice: never a stack trace, a hang, or a character that steers the terminal. */
class MutatedInputTest {
    private static final double LONGEST_SECONDS = 1; // of the processor, so that a busy computer fails no test
    private static final Set<Integer> STATUSES = Set.of(ExitStatus.DONE, ExitStatus.WRONG_INPUT, ExitStatus.FAIL, ExitStatus.UNDECIDED);
    @TempDir
    private Path folder;
    private final Set<Integer> statuses = new HashSet<>();
    private String journal;
    private final List<String> plans = new ArrayList<>();

    @BeforeEach
    void study() throws IOException {
        ReadyPlans.names().forEach(name -> plans.add(ReadyPlans.text(name)));
        String study = folder.resolve("whole").toString();
        Call.of("plan", "new", "--from", "fan-alternating", "--study", study);
        Call.of("plan", "freeze", "--study", study);
        StringBuilder answers = new StringBuilder("\n15 min\n");
        for (int trial = 0; trial < 12; trial++) {
            answers.append(60 + trial % 5).append(trial == 4 ? "\nundo wrong key\n" : "\nnote gloves on\n");
        }
        Call.typing(answers.toString(), "log", "--study", study);
        journal = Files.readString(folder.resolve("whole/journal.jsonl"));
        assertTrue(journal.lines().count() > 20, journal);
    }

    private Call survives(String what, String typed, String... words) {
        long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        Call call = Call.typing(typed, words);
        double seconds = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before) / 1e9;
        String said = String.join(" ", words) + " of " + what + ": status " + call.status() + "\n" + call.out() + call.err();
        statuses.add(call.status());
        assertTrue(STATUSES.contains(call.status()), said);
        assertFalse(call.err().contains("unforeseen") || call.err().contains("\tat "), said);
        assertTrue(seconds < LONGEST_SECONDS, () -> seconds + " s: " + said);
        assertTrue((call.out() + call.err()).codePoints().allMatch(c -> c == '\n' || c >= ' ' && c != 0x7f && !(c >= 0x80 && c < 0xa0) && c != 0x202e), said);
        return call;
    }

    /** Mutants that are all refused, or all harmless, would test nothing. */
    private void bothWays() {
        assertTrue(statuses.contains(ExitStatus.DONE) && statuses.size() > 1, statuses::toString);
    }

    private Path write(String name, String text) throws IOException {
        Path study = folder.resolve("mutant");
        Files.createDirectories(study);
        return Files.write(study.resolve(name), text.getBytes(StandardCharsets.UTF_8));
    }

    private void plans(int mutants, long seed) throws IOException {
        for (int i = 0; i < mutants; i++) {
            SplittableRandom random = new SplittableRandom(seed + i);
            String plan = new Mutation(random).of(plans.get(random.nextInt(plans.size())));
            String study = write("plan.yaml", plan).getParent().toString();
            String what = "plan mutant " + (seed + i) + "\n" + plan;
            survives(what, "", "plan", "show", "--study", study);
            survives(what, "", random.nextInt(4) == 0 ? "schedule" : "runs", "--study", study);
        }
    }

    private void journals(int mutants, long seed) throws IOException {
        for (int i = 0; i < mutants; i++) {
            SplittableRandom random = new SplittableRandom(seed + i);
            Mutation mutation = new Mutation(random);
            String mutant = random.nextBoolean() ? mutation.of(journal) : mutation.forged(journal);
            String study = write("journal.jsonl", mutant).getParent().toString();
            String what = "journal mutant " + (seed + i);
            survives(what, "", "journal", "check", "--study", study);
            String[] steps = {"verdict", "journal export", "schedule", "journal repair", "noise"};
            String step = steps[random.nextInt(steps.length)];
            survives(what, "", (step + " --study").concat(" " + study).split(" "));
        }
    }

    private void answers(int mutants, long seed) throws IOException {
        for (int i = 0; i < mutants; i++) {
            SplittableRandom random = new SplittableRandom(seed + i);
            String study = write("journal.jsonl", journal).getParent().toString();
            String answers = new Mutation(random).of("62.5\nnote snow\nundo\n61,5 62 60\ny\nskip rattled\nhelp\n60\npause tea\n");
            survives("answers " + (seed + i) + "\n" + answers, answers, "log", "--study", study);
            survives("answers " + (seed + i), "", "journal", "check", "--study", study);
        }
    }

    /** Found by mutation: half of all answers false was read, and then refused by the plan itself. */
    @Test
    void errorRatesAtTheirLimitsAreReadOrRefused() throws IOException {
        for (String rate : new String[] {"50 %", "49 %", "0.0001 %", "0.00000000001 %", "1e-320 %"}) {
            String plan = plans.get(0).replaceFirst("errors: .*", "errors: {false alarm: " + rate + ", missed gain: " + rate + "}");
            survives(plan, "", "plan", "check", "--study", write("plan.yaml", plan).getParent().toString());
        }
    }

    /** Found by mutation: a journal with right checksums and a score that has no logarithm. */
    @Test
    void aForgedScoreBelowZeroIsRefusedByWhatNeedsItsLogarithm() throws IOException {
        String negative = journal.replaceFirst("\"score\":6", "\"score\":-6");
        write("plan.yaml", plans.get(ReadyPlans.names().indexOf("fan-alternating")));
        String study = write("journal.jsonl", new Mutation(new SplittableRandom(1)).relinked(negative)).getParent().toString();
        assertTrue(survives("negative", "", "journal", "check", "--study", study).status() == ExitStatus.DONE);
        for (String verb : new String[] {"verdict", "noise", "report"}) {
            assertTrue(survives("negative", "", verb, "--study", study).status() == ExitStatus.WRONG_INPUT, verb);
        }
    }

    @Test
    void mutatedPlansAreReadOrRefused() throws IOException {
        plans(250, 1);
        bothWays();
    }

    @Test
    void mutatedJournalsAreReadAsFarAsTheyGo() throws IOException {
        write("plan.yaml", plans.get(ReadyPlans.names().indexOf("fan-alternating")));
        journals(250, 1_000_000);
        bothWays();
    }

    @Test
    void mutatedAnswersAreRecordedOrRefused() throws IOException {
        write("plan.yaml", plans.get(ReadyPlans.names().indexOf("fan-alternating")));
        answers(20, 2_000_000);
    }

    @Test
    @Tag("long")
    void aHundredThousandMutants() throws IOException {
        plans(45_000, 10_000_000);
        write("plan.yaml", plans.get(ReadyPlans.names().indexOf("fan-alternating")));
        journals(50_000, 20_000_000);
        answers(5_000, 30_000_000);
    }
}
