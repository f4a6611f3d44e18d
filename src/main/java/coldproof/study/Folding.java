package coldproof.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/** One pass over the entries, after {@link Undoing} has found what is taken back; goes on with later entries as long as none looks back. */
final class Folding {
    private final List<Oddity> oddities = new ArrayList<>();
    private final ClockWatch clocks = new ClockWatch(oddities);
    private final SessionBook sessions = new SessionBook(oddities);
    private final List<Entry> entries;
    private final Undoing undoing;
    private final Set<Long> missed = new HashSet<>(); // entries that a note is about and that were not there
    private final Map<Integer, Trial> trialByPosition = new LinkedHashMap<>();
    private final SortedMap<Integer, String> skipped = new TreeMap<>();
    private final List<Deviation> deviations = new ArrayList<>();
    private final List<Numbered<PlanAmended>> amendments = new ArrayList<>();
    private final List<Numbered<NoteAdded>> notes = new ArrayList<>();
    private final List<Numbered<StartConditionsChecked>> startConditions = new ArrayList<>();
    private final List<Numbered<CautionShown>> shown = new ArrayList<>();
    private final List<Numbered<CautionAcknowledged>> acknowledged = new ArrayList<>();
    private final List<Numbered<RuleLoosened>> loosened = new ArrayList<>();
    private final List<Numbered<LookTaken>> looks = new ArrayList<>();
    private final List<Numbered<ImportedTable>> imported = new ArrayList<>();
    private Optional<String> studyMark = Optional.empty();
    private Optional<Numbered<PlanFrozen>> plan = Optional.empty();
    private Optional<Numbered<NoiseCarriedIn>> noise = Optional.empty();
    private Optional<String> simulated = Optional.empty();
    private boolean paused;
    private int highestPosition;
    private long lastSequence;

    /** Keeps the list, to which {@link #goOn} adds. */
    Folding(List<Entry> entries) {
        this.entries = entries;
        undoing = new Undoing(entries);
        oddities.addAll(undoing.oddities());
        for (Entry entry : entries) {
            pass(entry);
        }
        if (oddities.size() > 1) {
            oddities.sort(Comparator.comparingLong(Oddity::sequence));
        }
    }

    private void pass(Entry entry) {
        clocks.next(entry);
        sessions.pass(entry);
        apply(entry);
        lastSequence = entry.sequence();
    }

    /** Whether an entry leaves all that came before as it was understood. */
    boolean leavesBefore(Entry entry) {
        return entry.event().kind() != EventKind.TRIAL_UNDONE && entry.sequence() > lastSequence && !missed.contains(entry.sequence());
    }

    /** Takes an entry that {@link #leavesBefore}. */
    void goOn(Entry entry) {
        entries.add(entry);
        pass(entry);
    }

    StudyState state() {
        return new StudyState(lastSequence, studyMark, plan, amendments, sessions.sessions(), List.copyOf(trialByPosition.values()),
                skipped, notes, startConditions, deviations, shown, acknowledged, loosened, looks, noise, imported, simulated,
                paused, oddities);
    }

    private void apply(Entry entry) {
        long n = entry.sequence();
        Event event = entry.event();
        switch (event.kind()) { // no default: a new kind must be thought about here
            case JOURNAL_BEGUN -> studyMark = studyMark.isPresent() ? studyMark : Optional.of(((JournalBegun) event).study());
            case PLAN_FROZEN -> freeze(n, (PlanFrozen) event);
            case PLAN_AMENDED -> amend(n, (PlanAmended) event);
            case NOISE_CARRIED_IN -> noise = Optional.of(new Numbered<>(n, (NoiseCarriedIn) event));
            case STUDY_SIMULATED -> simulated = Optional.of(((StudySimulated) event).text());
            case IMPORTED_TABLE -> imported.add(new Numbered<>(n, (ImportedTable) event));
            case SESSION_OPENED -> openSession(entry, (SessionOpened) event);
            case SESSION_CLOSED -> closeSession(entry, (SessionClosed) event);
            case PAUSED -> paused = true;
            case RESUMED -> paused = false;
            case START_CONDITIONS_CHECKED -> startConditions(n, (StartConditionsChecked) event);
            case TRIAL_RECORDED -> trial(entry, (TrialRecorded) event);
            case TRIAL_SKIPPED -> skip(n, (TrialSkipped) event);
            case TRIAL_UNDONE -> undo(n, (TrialUndone) event);
            case TRIAL_CORRECTED -> correct(n, (TrialCorrected) event);
            case NOTE_ADDED -> note(n, (NoteAdded) event);
            case DEVIATION_NOTED -> deviate(n, ((DeviationNoted) event).code(), ((DeviationNoted) event).text());
            case CAUTION_SHOWN -> shown.add(new Numbered<>(n, (CautionShown) event));
            case CAUTION_ACKNOWLEDGED -> acknowledged.add(new Numbered<>(n, (CautionAcknowledged) event));
            case RULE_LOOSENED -> loosen(n, (RuleLoosened) event);
            case LOOK_TAKEN -> looks.add(new Numbered<>(n, (LookTaken) event));
            case JOURNAL_MENDED -> odd(Oddity.Kind.MENDED, n, ((JournalMended) event).text());
            case JOURNALS_MERGED -> merged(n, (JournalsMerged) event);
            case UNKNOWN -> odd(Oddity.Kind.UNKNOWN_KIND, n, "entry " + n + " is of the kind \"" + ((UnknownEvent) event).word()
                    + "\", which this version does not know; it is kept but does not count");
        }
    }

    private void freeze(long n, PlanFrozen event) {
        if (plan.isPresent() && !plan.get().event().digest().equals(event.digest())) {
            odd(Oddity.Kind.PLAN_FROZEN_AGAIN, n, "another plan was frozen in entry " + n + "; the first was frozen in entry "
                    + plan.get().sequence());
        }
        plan = Optional.of(new Numbered<>(n, event));
    }

    private void amend(long n, PlanAmended event) {
        amendments.add(new Numbered<>(n, event));
        deviate(n, Deviation.PLAN_AMENDED, "the plan was changed after it had been frozen: " + event.reason());
    }

    private void openSession(Entry entry, SessionOpened event) {
        sessions.open(entry, event);
        paused = false;
    }

    private void closeSession(Entry entry, SessionClosed event) {
        sessions.close(entry, event);
        paused = event.ending() == SessionClosed.Ending.PAUSED;
        if (event.ending() == SessionClosed.Ending.ABORTED) {
            deviate(entry.sequence(), Deviation.SESSION_ABORTED, "session " + event.session() + " was broken off: " + event.reason());
        }
    }

    private void startConditions(long n, StartConditionsChecked event) {
        startConditions.add(new Numbered<>(n, event));
        for (String deviation : event.deviations()) {
            deviate(n, Deviation.START_CONDITION, deviation);
        }
    }

    private void trial(Entry entry, TrialRecorded event) {
        long n = entry.sequence();
        if (undoing.isTakenBack(n)) {
            return;
        }
        sessions.trial(entry, event.session());
        Trial first = trialByPosition.get(event.position());
        if (first != null) {
            odd(Oddity.Kind.POSITION_TAKEN, n, "position " + event.position() + " was recorded again in entry " + n + "; entry "
                    + first.sequence() + " stands");
            return;
        }
        skipped.remove(event.position());
        trialByPosition.put(event.position(), new Trial(n, event, event.score(), List.of()));
        if (event.position() < highestPosition) {
            deviate(n, Deviation.OUT_OF_ORDER, "trial " + event.position() + " was run after trial " + highestPosition);
        }
        highestPosition = Math.max(highestPosition, event.position());
    }

    private void skip(long n, TrialSkipped event) {
        if (undoing.isTakenBack(n)) {
            return;
        }
        Trial trial = trialByPosition.get(event.position());
        if (trial != null) {
            odd(Oddity.Kind.POSITION_TAKEN, n, "position " + event.position() + " was skipped in entry " + n + " though entry "
                    + trial.sequence() + " recorded it; the trial stands");
            return;
        }
        skipped.put(event.position(), event.reason());
        deviate(n, Deviation.TRIAL_SKIPPED, "trial " + event.position() + " was skipped: " + event.reason());
    }

    private void undo(long n, TrialUndone event) {
        Entry target = undoing.entry(event.sequence());
        if (!undoing.isTakenBack(n) && target != null && target.event() instanceof TrialRecorded trial && target.sequence() < n) {
            deviate(n, Deviation.UNDONE, "trial " + trial.position() + " (entry " + target.sequence() + ") was taken back"
                    + (event.reason().isBlank() ? "" : ": " + event.reason()));
        }
    }

    private void correct(long n, TrialCorrected event) {
        if (undoing.isTakenBack(n)) {
            return;
        }
        Entry target = undoing.entry(event.sequence());
        if (target == null || target.sequence() >= n || !(target.event() instanceof TrialRecorded recorded)) {
            odd(Oddity.Kind.WRONG_TARGET, n, "entry " + n + " corrects entry " + event.sequence() + ", which is not an earlier trial");
            return;
        }
        Trial trial = trialByPosition.get(recorded.position());
        if (trial == null || trial.sequence() != target.sequence()) {
            return; // the trial was taken back or does not stand: its correction goes with it
        }
        trialByPosition.put(recorded.position(), trial.corrected(n, event.score()));
        deviate(n, Deviation.SCORE_CORRECTED, "the score of trial " + recorded.position() + " was corrected from " + trial.score() + " to "
                + event.score() + ": " + event.reason());
    }

    private void note(long n, NoteAdded event) {
        notes.add(new Numbered<>(n, event));
        if (event.about().isPresent() && undoing.entry(event.about().getAsLong()) == null) {
            missed.add(event.about().getAsLong());
            odd(Oddity.Kind.WRONG_TARGET, n, "entry " + n + " is a note about entry " + event.about().getAsLong() + ", which is not there");
        }
    }

    private void loosen(long n, RuleLoosened event) {
        loosened.add(new Numbered<>(n, event));
        deviate(n, Deviation.RULE_LOOSENED, "the safety rule " + event.rule() + " was set aside: " + event.reason());
    }

    private void merged(long n, JournalsMerged event) {
        odd(Oddity.Kind.MENDED, n, "two copies of the journal were merged: " + event.common() + " entries in common, "
                + event.fromFirst() + " from the first, " + event.fromSecond() + " from the second");
        for (String settled : event.resolved()) {
            odd(Oddity.Kind.MENDED, n, settled);
        }
    }

    private void deviate(long n, String code, String text) {
        deviations.add(new Deviation(n, code, text));
    }

    private void odd(Oddity.Kind kind, long n, String text) {
        oddities.add(new Oddity(kind, n, text));
    }
}
