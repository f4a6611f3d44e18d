package coldproof.job;

import coldproof.files.folder.StudyFolder;
import coldproof.files.journal.DiskTrouble;
import coldproof.files.plan.PlanReader;
import coldproof.files.plan.PlanWriter;
import coldproof.plan.Plan;
import coldproof.plan.NoiseAssumption;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.study.PlanAmended;
import coldproof.study.PlanFrozen;
import coldproof.study.StudyState;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Makes, checks and freezes the plan of a study. */
public final class PlanJob {
    private PlanJob() {}

    /** What freezing did. */
    public enum Freezing {
        /** The plan was frozen now. */
        FROZEN,
        /** This very plan was frozen before. */
        FROZEN_BEFORE,
        /** A changed plan was taken in, with its reason, as a deviation. */
        AMENDED
    }

    /**
     * Writes a new plan into a study folder, which is made if it is not there. An existing plan is never overwritten.
     *
     * @return the file written
     * @throws Refused if there is a plan already, the text is no plan, or the folder cannot be written to
     */
    public static Path create(Path study, String yaml) {
        Path file = study.resolve(PlanFile.NAME);
        PlanReader.read(file.toString(), yaml);
        try {
            Files.createDirectories(study.toAbsolutePath());
            Files.createFile(file);
        } catch (FileAlreadyExistsException there) {
            throw there(file);
        } catch (IOException failed) {
            throw unwritten(file, failed);
        }
        try {
            Files.writeString(file, yaml, StandardCharsets.UTF_8);
            return file;
        } catch (IOException failed) {
            Refused refused = unwritten(file, failed);
            removeHalf(file, refused);
            throw refused;
        }
    }

    private static Refused unwritten(Path file, IOException failed) {
        return new Refused(Problem.of("the plan cannot be written: " + DiskTrouble.reason(failed), Place.named(file.toString()), "a folder that can be written to",
                "Name another folder with --study DIR."));
    }

    /** Takes away the file begun on a full disk: it would stand in the way of the next try and be no plan. */
    private static void removeHalf(Path file, Refused because) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException stays) {
            because.addSuppressed(stays);
        }
    }

    /**
     * A plan that goes on from an earlier study: the same question, arrangement and limits, the noise as that study measured it, and a run
     * order of its own. What is to be different is then written into the file.
     *
     * @throws Refused if the study cannot be read, or no condition was repeated in it
     */
    public static Plan following(Path study) {
        Plan before = StudyView.read(study).plan();
        NoiseAssumption noise = NoiseJob.carried(List.of(study), Optional.empty(), Optional.empty(), List.of());
        return new Plan(before.title(), before.device(), before.metric(), before.compare(), before.mattersPercent(), before.claim(), before.factors(),
                Optional.of(noise), before.errors(), before.looks(), before.layout(), before.budget(), before.start(), before.abort(), before.workload(),
                before.seed() + 1);
    }

    /** The text of a plan as {@link #create} takes it. */
    public static String text(Plan plan) {
        return PlanWriter.write(plan);
    }

    /**
     * Sees to it that a new plan may be made in a folder, before anybody is asked for it.
     *
     * @throws Refused if there is a plan already
     */
    public static void refuseIfThere(Path study) {
        if (PlanFile.exists(study)) {
            throw there(study.resolve(PlanFile.NAME));
        }
    }

    private static Refused there(Path file) {
        return new Refused(Problem.of("there is a plan here already", Place.named(file.toString()), "a folder without one; nothing was written",
                "Edit that plan, or name another folder with --study DIR."));
    }

    /**
     * Looks at the text of a plan that is not written yet.
     *
     * @throws Refused if it is no plan
     */
    static void checkText(String yaml) {
        PlanReader.read("the plan so far", yaml);
    }

    /**
     * Freezes the plan: its text and digest go into the journal.
     *
     * @param reason why a plan that is frozen already is changed; needed only then
     * @throws Refused if the plan is wrong, or it was frozen differently and no reason is given
     */
    public static Freezing freeze(Path study, Machine machine, Optional<String> reason) {
        PlanFile file = PlanFile.of(study);
        try (StudyFolder folder = StudyFolder.open(study.toAbsolutePath(), machine.journalClock())) {
            StudyState state = StudyState.fold(folder.journal().entries());
            if (state.plan().isEmpty()) {
                folder.journal().append(new PlanFrozen(file.digest(), Optional.of(file.text())));
                return Freezing.FROZEN;
            }
            if (state.planDigest().orElseThrow().equals(file.digest())) {
                return Freezing.FROZEN_BEFORE;
            }
            if (reason.isEmpty() || reason.get().isBlank()) {
                throw new Refused(Problem.of("another plan was frozen here before", Place.named(file.file().toString()),
                        "the plan as it was frozen, or a reason for the change",
                        "Put the plan back, or run: coldproof plan freeze --reason WHY (it is shown as a deviation in every verdict)."));
            }
            folder.journal().append(new PlanAmended(file.digest(), Optional.of(file.text()), reason.get()));
            return Freezing.AMENDED;
        }
    }
}
