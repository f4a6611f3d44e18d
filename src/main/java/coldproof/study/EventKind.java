package coldproof.study;

import java.util.Optional;

/** The kinds of event and the word each is written with. A word, once released, keeps its meaning for ever. */
public enum EventKind {
    /** {@link JournalBegun}. */
    JOURNAL_BEGUN("journal"),
    /** {@link PlanFrozen}. */
    PLAN_FROZEN("plan-frozen"),
    /** {@link PlanAmended}. */
    PLAN_AMENDED("plan-amended"),
    /** {@link NoiseCarriedIn}. */
    NOISE_CARRIED_IN("noise-carried-in"),
    /** {@link StudySimulated}. */
    STUDY_SIMULATED("simulated"),
    /** {@link ImportedTable}. */
    IMPORTED_TABLE("imported-table"),
    /** {@link SessionOpened}. */
    SESSION_OPENED("session-opened"),
    /** {@link SessionClosed}. */
    SESSION_CLOSED("session-closed"),
    /** {@link Paused}. */
    PAUSED("paused"),
    /** {@link Resumed}. */
    RESUMED("resumed"),
    /** {@link StartConditionsChecked}. */
    START_CONDITIONS_CHECKED("start-conditions"),
    /** {@link TrialRecorded}. */
    TRIAL_RECORDED("trial"),
    /** {@link TrialSkipped}. */
    TRIAL_SKIPPED("trial-skipped"),
    /** {@link TrialUndone}. */
    TRIAL_UNDONE("undone"),
    /** {@link TrialCorrected}. */
    TRIAL_CORRECTED("trial-corrected"),
    /** {@link NoteAdded}. */
    NOTE_ADDED("note"),
    /** {@link DeviationNoted}. */
    DEVIATION_NOTED("deviation"),
    /** {@link CautionShown}. */
    CAUTION_SHOWN("caution-shown"),
    /** {@link CautionAcknowledged}. */
    CAUTION_ACKNOWLEDGED("caution-acknowledged"),
    /** {@link RuleLoosened}. */
    RULE_LOOSENED("rule-loosened"),
    /** {@link LookTaken}. */
    LOOK_TAKEN("look"),
    /** {@link JournalMended}. */
    JOURNAL_MENDED("journal-mended"),
    /** {@link JournalsMerged}. */
    JOURNALS_MERGED("journals-merged"),
    /** {@link UnknownEvent}: a kind this version does not know; its own word is in the event. */
    UNKNOWN("");

    private static final EventKind[] ALL = values();
    private final String word;

    EventKind(String word) {
        this.word = word;
    }

    /** The word in the journal; empty for {@link #UNKNOWN}. */
    public String word() {
        return word;
    }

    /** The kind written with this word; empty when this version does not know it. */
    public static Optional<EventKind> of(String word) {
        for (EventKind kind : ALL) {
            if (kind != UNKNOWN && kind.word.equals(word)) {
                return Optional.of(kind);
            }
        }
        return Optional.empty();
    }
}
