package coldproof.job;

import coldproof.files.folder.StudyFolder;
import coldproof.quantity.Refused;
import coldproof.reason.looks.LookPoint;
import coldproof.reason.looks.LookSchedule;
import coldproof.reason.verdict.Comparisons;
import coldproof.reason.verdict.LookReport;
import coldproof.study.Deviation;
import coldproof.study.DeviationNoted;
import coldproof.study.LookTaken;
import coldproof.study.Numbered;
import coldproof.study.StudyState;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Writes into the journal that somebody looked at the results before the end: at a look of the plan, what was seen and the bound it was held
 * against; anywhere else, a deviation, because whoever stops or goes on by what they see there has no longer the false alarms of the plan.
 */
public final class LookRecord {
    private LookRecord() {}

    /**
     * Writes down what a verdict of a study has just shown: of a plan with looks no more than the look that is due. The last look is no interim
     * one, and a look that shows the same again is not written again; one that shows something else, as after a trial was taken back, is.
     *
     * @param answers the verdict, by {@link VerdictJob#ofStudy(StudyView)}
     * @return what to tell the person; the verdict stands also where the journal could not be written
     */
    public static List<String> write(StudyView view, List<VerdictJob.Answer> answers, Machine machine) {
        if (view.plan().looks() == 1) {
            return unplanned(view, machine);
        }
        Optional<LookTaken> look = Comparisons.deciding(answers.stream().map(VerdictJob.Answer::compared).toList()).looks().flatMap(LookRecord::interim);
        return look.isEmpty() || isWritten(view.state(), look.get()) ? List.of() : write(view.folder(), look.get(), machine);
    }

    /**
     * Writes down that all trials so far are shown with their levels, as the report, its data, the limiter and some ledgers show them; call it before they are.
     *
     * @return what to tell the person
     */
    public static List<String> ofAllTrials(Path folder, Machine machine) {
        StudyView view = StudyView.read(folder);
        if (!isUnderWay(view)) {
            return List.of();
        }
        List<String> said = new ArrayList<>(view.plan().looks() == 1 ? List.of() : write(view, VerdictJob.ofStudy(view), machine));
        said.addAll(unplanned(view, machine));
        return said;
    }

    /** Whether trials are still to come and there is a difference to see. */
    private static boolean isUnderWay(StudyView view) {
        long levels = view.state().trials().stream().map(trial -> trial.recorded().levels().get(view.plan().compare().factor())).distinct().count();
        return view.frozen() && StudyFolder.hasJournal(view.folder()) && view.next().isPresent() && levels > 1;
    }

    private static List<String> unplanned(StudyView view, Machine machine) {
        int seen = view.plan().looks() == 1 ? 0 : LookSchedule.of(view.plan(), view.sheet()).reached(view.state().settled()::contains)
                .map(LookPoint::lastPosition).orElse(0);
        if (!isUnderWay(view) || view.state().trials().stream().noneMatch(trial -> trial.position() > seen)) {
            return List.of();
        }
        DeviationNoted looked = new DeviationNoted("the results were looked at after " + view.state().trials().size() + " of "
                + view.sheet().positions().size() + " trials, where the plan has no look", Deviation.UNPLANNED_LOOK);
        if (isNoted(view.state(), looked)) {
            return List.of();
        }
        try (BenchStudy study = BenchStudy.open(view.folder(), machine)) {
            if (!isNoted(study.view().state(), looked)) {
                study.append(looked);
            }
            return List.of("Recorded as a deviation: " + looked.text() + ".");
        } catch (Refused unwritten) {
            return List.of("A look outside the plan could not be recorded: " + unwritten.problems().get(0).what() + ".");
        }
    }

    private static boolean isNoted(StudyState state, DeviationNoted looked) {
        return state.deviations().stream().anyMatch(before -> before.code().equals(looked.code()) && before.text().equals(looked.text()));
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
