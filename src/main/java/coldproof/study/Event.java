package coldproof.study;

/** Something that happened in a study. A closed set: what is undone or corrected is a new event, never a change of an old one. */
public sealed interface Event permits JournalBegun, PlanFrozen, PlanAmended, NoiseCarriedIn, StudySimulated, ImportedTable, SessionOpened,
        SessionClosed, Paused, Resumed, StartConditionsChecked, TrialRecorded, TrialSkipped, TrialUndone, TrialCorrected, NoteAdded,
        DeviationNoted, CautionShown, CautionAcknowledged, RuleLoosened, LookTaken, JournalMended, JournalsMerged, UnknownEvent {
    /** Which of the closed set this is. */
    EventKind kind();
}
