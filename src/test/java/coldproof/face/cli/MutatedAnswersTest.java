package coldproof.face.cli;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.face.dialogue.Lines;
import coldproof.face.dialogue.LogDialogue;
import coldproof.face.dialogue.PlanDialogue;
import coldproof.job.LogJob;
import coldproof.job.StudyView;
import coldproof.job.TestBench;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Answers as chance and malice would type them: no hang, no exception, no control character on the screen, a journal that reads. */
class MutatedAnswersTest {
    private static final List<String> USUAL = List.of("", "", "61.2", "60.1 61.0 60,8", "-6 °C", "80 %", "wall", "w", "none", "Mira", "20 min", "u", "undo typo",
            "skip lid closed", "s", "n", "note cold hands", "y", "?", "battery", "snow", "aside precipitation under the eaves", "soak", "abort snow", "precipitation none");
    private static final List<String> PLAN = List.of("", "", "", "ambient", "room = 21 °C", "chilled = -6 °C", "n", "y", "render rate", "frames/s", "higher", "3 %",
            "gain", "1.2 %", "0.8 %", "5 min", "4 6", "back", "30 W", "trail laptop");
    private static final double LONGEST_SECONDS = 1; // of one answer, as promised; the machine may be busy, so the fourfold is allowed
    private static final double BUSY = 4;
    @TempDir
    Path folder;

    @Test
    void someMutatedAnswersAtTheBenchAndToTheGuide() {
        bench(3, 120);
        guide(6, 60);
    }

    @Test
    @Tag("long")
    void thirtyThousandMutatedAnswers() {
        bench(100, 250);
        guide(100, 60);
    }

    /** Lines that come one by one, and note how long the one before took. */
    private static final class Mutated implements Lines {
        private final SplittableRandom random;
        private final Mutation mutation;
        private final List<String> usual;
        private final PrintWriter out;
        private int left;
        private long asked = System.nanoTime();
        private double slowest;
        private String slowestAnswer = "";
        private String last = "";

        Mutated(long seed, List<String> usual, int answers, StringWriter out) {
            random = new SplittableRandom(seed);
            mutation = new Mutation(new SplittableRandom(seed + 1));
            this.usual = usual;
            this.out = new PrintWriter(out);
            left = answers;
        }

        @Override
        public Optional<String> ask(String prompt) {
            out.print(prompt);
            double took = (System.nanoTime() - asked) / 1e9;
            slowestAnswer = took > slowest ? last : slowestAnswer;
            slowest = Math.max(slowest, took);
            asked = System.nanoTime();
            String plain = usual.get(random.nextInt(usual.size()));
            String line = random.nextInt(3) == 0 ? plain : mutation.of(plain);
            last = prompt + line;
            return left-- > 0 ? Optional.of(line.replace('\n', ' ').replace('\r', ' ')) : Optional.empty();
        }

        @Override
        public PrintWriter out() {
            return out;
        }

        @Override
        public int columns() {
            return 80;
        }
    }

    private void bench(int studies, int answers) {
        for (int i = 0; i < studies; i++) {
            TestBench bench = new TestBench(folder.resolve("bench" + i), i % 2 == 0 ? TestBench.WINTER_PLAN : TestBench.FAN_PLAN);
            StringWriter said = new StringWriter();
            Mutated lines = new Mutated(i, USUAL, answers, said);
            int sittings = 0;
            while (lines.left > 0 && sittings++ < 50) {
                try (LogJob log = bench.log()) {
                    LogDialogue.run(log, lines);
                }
            }
            judge(said, lines);
            assertTrue(StudyView.read(bench.folder()).problems().isEmpty());
        }
    }

    private void guide(int plans, int answers) {
        for (int i = 0; i < plans; i++) {
            StringWriter said = new StringWriter();
            Mutated lines = new Mutated(1000 + i, PLAN, answers, said);
            Path study = folder.resolve("guided" + i);
            PlanDialogue.run(study, lines);
            judge(said, lines);
            if (Files.exists(study.resolve("plan.yaml"))) {
                StudyView.read(study);
            }
        }
    }

    private static void judge(StringWriter said, Mutated lines) {
        String text = said.toString();
        assertFalse(text.chars().anyMatch(c -> c < ' ' && c != '\n' && c != '\r' || c == 0x7f || c == 0x202e || c == 0x85), () -> "a control character: "
                + text.chars().filter(c -> c < ' ' && c != '\n').boxed().toList());
        assertTrue(lines.slowest < BUSY * LONGEST_SECONDS, () -> "an answer took " + lines.slowest + " s: " + lines.slowestAnswer);
    }
}
