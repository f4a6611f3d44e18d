package coldproof.job;

import coldproof.files.Meanwhile;
import coldproof.files.folder.StudyFolder;
import coldproof.files.journal.Reading;
import coldproof.files.plan.PlanReader;
import coldproof.plan.Change;
import coldproof.plan.Factor;
import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.plan.RunSheet;
import coldproof.plan.Scheduler;
import coldproof.quantity.Counted;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.checklist.Checklist;
import coldproof.reason.verdict.Observation;
import coldproof.study.Deviation;
import coldproof.study.JournalMended;
import coldproof.study.Oddity;
import coldproof.study.StudyState;
import coldproof.study.Trial;
import coldproof.study.TrialRecorded;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.Supplier;

/**
 * A study as it stands, read without holding it open: the plan in force, the run sheet, what happened.
 *
 * @param folder the study folder
 * @param plan the frozen plan; the plan on disk where none is frozen
 * @param planDigest digest of that plan
 * @param frozen whether the plan is frozen
 * @param sheet the run sheet drawn from the plan's seed
 * @param state what happened so far
 * @param problems what is wrong with the journal file; empty when it is sound
 * @param changedSinceFrozen whether plan.yaml is no longer what was frozen
 */
public record StudyView(Path folder, Plan plan, String planDigest, boolean frozen, RunSheet sheet, StudyState state, List<Problem> problems,
        boolean changedSinceFrozen) {
    /**
     * Reads a study.
     *
     * @throws coldproof.quantity.Refused if there is neither a frozen plan nor a plan that can be read
     */
    public static StudyView read(Path folder) {
        if (!StudyFolder.hasJournal(folder)) {
            PlanFile file = PlanFile.of(folder);
            return new StudyView(folder, file.plan(), file.digest(), false, sheet(file.plan()), StudyState.fold(List.of()), List.of(), false);
        }
        Meanwhile<Past> past = Meanwhile.of("journal", new PastOf(folder));
        Optional<Understood> onDisk = Understood.onDisk(folder); // nearly always the frozen one
        return of(folder, past.get().state(), past.get().problems(), onDisk);
    }

    /** What the journal holds. */
    private record Past(StudyState state, List<Problem> problems) {}

    /** Reads it. By name, so that it begins before the first lambda of the program is ready. */
    private record PastOf(Path folder) implements Supplier<Past> {
        @Override
        public Past get() {
            Reading reading = StudyFolder.read(folder);
            return new Past(StudyState.fold(reading.entries()), reading.problems());
        }
    }

    /** The text of a plan, what it says, and the run sheet drawn from it. */
    private record Understood(String text, Plan plan, RunSheet sheet) {
        static Understood of(String file, String text) {
            Plan plan = PlanReader.read(file, text);
            return new Understood(text, plan, StudyView.sheet(plan));
        }

        /** The plan in a study folder; empty where it cannot be read, which is told only where it matters. */
        static Optional<Understood> onDisk(Path folder) {
            Optional<String> text = PlanFile.textIn(folder);
            try {
                return text.isPresent() ? Optional.of(of(PlanFile.NAME, text.get())) : Optional.empty();
            } catch (Refused wrong) {
                return Optional.empty();
            }
        }
    }

    static StudyView of(Path folder, StudyState state, List<Problem> problems) {
        return of(folder, state, problems, Optional.empty());
    }

    private static StudyView of(Path folder, StudyState state, List<Problem> problems, Optional<Understood> known) {
        Optional<String> frozenText = planText(state);
        if (frozenText.isEmpty()) {
            PlanFile file = PlanFile.of(folder);
            boolean changed = state.planDigest().isPresent() && !state.planDigest().get().equals(file.digest());
            return new StudyView(folder, file.plan(), file.digest(), state.plan().isPresent(), sheet(file.plan()), state, problems, changed);
        }
        String text = frozenText.get();
        boolean same = known.isPresent() && known.get().text().equals(text);
        boolean changed = known.isPresent() ? !same : changed(folder, text);
        Understood frozen = same ? known.get() : Understood.of(folder.resolve("journal.jsonl") + " (the frozen plan)", text);
        return new StudyView(folder, frozen.plan(), state.planDigest().orElseThrow(), true, frozen.sheet(), state, problems, changed);
    }

    /** The same study with more entries; what follows from the plan alone is not found again. */
    StudyView with(StudyState later, List<Problem> laterProblems) {
        Optional<String> text = planText(later);
        if (text.isEmpty() || !text.equals(planText(state))) {
            return of(folder, later, laterProblems);
        }
        return new StudyView(folder, plan, planDigest, frozen, sheet, later, laterProblems, changed(folder, text.get()));
    }

    /** The text in force: the last amendment's, else that of the plan as first frozen. */
    private static Optional<String> planText(StudyState state) {
        if (!state.amendments().isEmpty()) {
            return state.amendments().get(state.amendments().size() - 1).event().planText();
        }
        return state.plan().isPresent() ? state.plan().get().event().planText() : Optional.empty();
    }

    /** Whether the journal holds the plan as frozen, as those of this program do; of other journals the plan on disk counts. */
    public boolean keepsFrozen() {
        return planText(state).isPresent();
    }

    /** Whether the plan on disk is another than the frozen one, or gone, or no text. */
    private static boolean changed(Path folder, String frozenText) {
        return !PlanFile.textIn(folder).equals(Optional.of(frozenText));
    }

    /** The run sheet of a plan: the same on every machine. */
    static RunSheet sheet(Plan plan) {
        return Scheduler.draw(plan, new SplittableRandom(plan.seed()));
    }

    /** The next trial to run; empty when all are run, skipped, or left of a session that was broken off. */
    public Optional<Position> next() {
        return Checklist.nextTrial(sheet, state);
    }

    /** How many trials are still to run. */
    public int toCome() {
        return Checklist.toCome(sheet, state);
    }

    /**
     * The trials that count, each with a score that has a logarithm. A journal written by another program may hold others.
     *
     * @throws Refused if one has not
     */
    List<Trial> scored() {
        List<Problem> problems = new ArrayList<>();
        for (Trial trial : state.trials()) {
            if (!(trial.score() > 0)) {
                problems.add(Problem.of("the score of trial " + trial.position() + " is " + trial.score() + " (entry " + trial.sequence() + ")",
                        Place.named(folder.resolve("journal.jsonl").toString()), "a number above 0, because changes are ratios",
                        "Take it back with: coldproof log --undo REASON, or compare with another copy of the journal."));
            }
        }
        if (!problems.isEmpty()) {
            throw new Refused(problems);
        }
        return state.trials();
    }

    /** The trials that count, as the verdict sees them; other factors with several levels are adjusted for. */
    public List<Observation> observations() {
        List<Factor> others = plan.factors().stream().filter(factor -> factor.levels().size() > 1 && !factor.name().equals(plan.compare().factor())).toList();
        Map<Integer, Integer> pairs = new HashMap<>();
        sheet.positions().forEach(position -> pairs.put(position.number(), position.pair()));
        List<Observation> observations = new ArrayList<>();
        boolean sessions = plan.layout().kind() == coldproof.plan.Layout.Kind.SESSIONS;
        for (Trial trial : scored()) {
            TrialRecorded recorded = trial.recorded();
            int pair = pairs.getOrDefault(recorded.position(), 0);
            List<String> adjust = others.stream().map(factor -> recorded.levels().getOrDefault(factor.name(), "")).toList();
            observations.add(new Observation(recorded.levels().getOrDefault(plan.compare().factor(), ""), sessions ? Integer.toString(recorded.session()) : "",
                    recorded.position(), pair == 0 ? "" : Integer.toString(pair), adjust, trial.score()));
        }
        return observations;
    }

    /** How the compared factor was set. */
    public Change change() {
        return plan.comparedFactor().change();
    }

    /** What is wrong with the record itself, so that a trial may be missing from it or not be what was recorded; one sentence each. */
    List<String> damages() {
        List<String> damages = new ArrayList<>();
        for (Problem problem : problems) {
            if (!problem.remedy().equals(Reading.NOTHING_TO_DO)) {
                damages.add("the journal is damaged, " + problem.what());
            }
        }
        long lost = state.oddities().stream().filter(oddity -> oddity.kind() == Oddity.Kind.MENDED && oddity.text().endsWith(JournalMended.UNREAD)).count();
        if (lost > 0) {
            damages.add(Counted.of(lost, "entry", "entries") + JournalMended.UNREAD);
        }
        return damages;
    }

    /** Where the study left its plan, one sentence each. */
    public List<String> deviations() {
        List<String> deviations = new ArrayList<>();
        if (!frozen && !state.trials().isEmpty()) {
            deviations.add("the plan was not frozen before the first trial");
        }
        if (changedSinceFrozen) {
            deviations.add(keepsFrozen() ? "plan.yaml is no longer what was frozen; the frozen plan is the one judged by"
                    : "plan.yaml is no longer what was frozen, and the journal holds no copy of that: the changed plan is the one judged by");
        }
        for (Deviation deviation : state.deviations()) {
            deviations.add(deviation.text());
        }
        for (Trial trial : state.trials()) {
            int number = trial.recorded().position();
            if (number > sheet.positions().size()) {
                deviations.add("trial " + number + " is not on the run sheet");
            } else if (!sheet.positions().get(number - 1).levels().equals(trial.recorded().levels())) {
                deviations.add("trial " + number + " was run as " + trial.recorded().levels() + ", the run sheet says " + sheet.positions().get(number - 1).levels());
            }
        }
        int all = sheet.positions().size();
        int open = all - state.trials().size() - state.skipped().size();
        if (open > 0 && !state.trials().isEmpty()) {
            int toCome = toCome();
            if (toCome > 0) {
                deviations.add(toCome + " of " + all + " planned trials " + (toCome == 1 ? "is" : "are") + " not run yet");
            }
            if (open > toCome) {
                deviations.add(open - toCome + " of " + all + " planned trials were left of a session that was broken off");
            }
        }
        return deviations;
    }
}
