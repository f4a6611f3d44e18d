package coldproof.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.quantity.Refused;
import coldproof.reason.checklist.Ask;
import coldproof.reason.checklist.Question;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DryRunTest {
    private static final Pattern NUMBER = Pattern.compile("(?:reads|rate is|such as) (-?\\d+(?:\\.\\d+)?)");
    private static final int ANSWERS = 60;
    @TempDir
    Path above;
    private Path study;

    @BeforeEach
    void plan() {
        study = above.resolve("study");
        PlanJob.create(study, ReadyPlans.text("chilled-air"));
    }

    private static String answer(Question question, List<String> shown) {
        Matcher number = NUMBER.matcher(shown.isEmpty() ? "" : shown.get(0));
        String read = number.find() ? number.group(1) : "";
        return switch (question.ask()) {
            case SOAK -> read + " min";
            case AIR, DIE -> read + " C";
            case WIND -> read + " m/s";
            case BATTERY -> read + " %";
            case CONFIRM_SCORE -> "y";
            case SAFETY -> "Practising";
            default -> read;
        };
    }

    @Test
    void whoTypesWhatTheInstrumentsShowGetsThroughASession() throws IOException {
        Path folder = DryRun.folder(study, Optional.empty(), Machine.atHand());
        try (LogJob log = LogJob.open(folder, Machine.atHand())) {
            DryRun instruments = DryRun.instruments(study, log.view().plan());
            for (int i = 0; i < ANSWERS && log.question().step().session() == 1; i++) {
                Question question = log.question();
                List<String> shown = instruments.show(question);
                shown.forEach(line -> assertTrue(line.startsWith("SIMULATED: "), line));
                assertFalse(question.ask() == Ask.SCORE && shown.isEmpty(), "a score must be shown");
                log.answer(answer(question, shown));
            }
            assertEquals(4, log.view().state().trials().size());
            assertTrue(log.view().state().simulated().isPresent());
        }
        try (var inside = Files.list(study)) {
            assertEquals(List.of("plan.yaml"), inside.map(file -> file.getFileName().toString()).toList());
        }
    }

    @Test
    void aDryRunGoesOnInItsFolderAndInNoOther() throws IOException {
        Path folder = DryRun.folder(study, Optional.empty(), Machine.atHand());
        assertEquals(above.resolve("study-dry-run"), folder);
        assertEquals(folder, DryRun.folder(study, Optional.empty(), Machine.atHand()));
        assertThrows(Refused.class, () -> DryRun.folder(study, Optional.of(study), Machine.atHand()));
        Path other = Files.createDirectory(above.resolve("other"));
        Files.writeString(other.resolve("mine.txt"), "mine");
        assertThrows(Refused.class, () -> DryRun.folder(study, Optional.of(other), Machine.atHand()));
    }
}
