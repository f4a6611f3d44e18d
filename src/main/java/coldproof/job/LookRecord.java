package coldproof.job;

import coldproof.quantity.Refused;
import coldproof.reason.verdict.Comparisons;
import coldproof.reason.verdict.LookReport;
import coldproof.study.LookTaken;
import coldproof.study.Numbered;
import coldproof.study.StudyState;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Writes into the journal that somebody took an interim look: what was seen, and the bound it was held against. */
public final class LookRecord {
    private LookRecord() {}

    /**
     * Writes down the look that a verdict of a study has just shown. The last look is no interim one, and a look that shows the same again is not
     * written again; one that shows something else, as after a trial was taken back, is.
     *
     * @param answers the verdict, by {@link VerdictJob#ofStudy(StudyView)}
     * @return what to tell the person; the verdict stands also where the journal could not be written
     */
    public static List<String> write(StudyView view, List<VerdictJob.Answer> answers, Machine machine) {
        Optional<LookTaken> look = Comparisons.deciding(answers.stream().map(VerdictJob.Answer::compared).toList()).looks().flatMap(LookRecord::interim);
        return look.isEmpty() || isWritten(view.state(), look.get()) ? List.of() : write(view.folder(), look.get(), machine);
    }

    private static List<String> write(Path folder, LookTaken look, Machine machine) {
        try (BenchStudy study = BenchStudy.open(folder, machine)) {
            if (!isWritten(study.view().state(), look)) {
                study.append(look);
            }
            return List.of("Look " + look.look() + " is taken. Recorded.");
        } catch (Refused unwritten) {
            return List.of("Look " + look.look() + " could not be recorded: " + unwritten.problems().get(0).what()
                    + ". Run coldproof verdict again when the journal can be written.");
        }
    }

    private static Optional<LookTaken> interim(LookReport report) {
        List<LookReport.Look> taken = report.taken();
        return taken.isEmpty() ? Optional.empty() : Optional.of(taken.get(taken.size() - 1))
                .filter(look -> look.number() < report.planned() && Double.isFinite(look.t()) && Double.isFinite(look.bound()))
                .map(look -> new LookTaken(look.number(), look.t(), look.bound(), look.word().code()));
    }

    private static boolean isWritten(StudyState state, LookTaken look) {
        return state.looks().stream().map(Numbered::event).filter(before -> before.look() == look.look()).reduce((first, second) -> second)
                .filter(look::equals).isPresent();
    }
}
