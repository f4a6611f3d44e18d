package coldproof.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import org.junit.jupiter.api.Test;

class StudyStateTest {
    private final List<Entry> entries = new ArrayList<>();
    private OffsetDateTime now = OffsetDateTime.parse("2026-01-14T09:30:00+01:00");
    private double monotonicSeconds;
    private String process = "first";

    /** Both clocks run on by so many seconds, then the event is entered. */
    private long after(double seconds, Event event) {
        now = now.plusNanos((long) (seconds * 1e9));
        monotonicSeconds += seconds;
        long sequence = entries.size() + 1;
        entries.add(new Entry(sequence, now, monotonicSeconds, process, event));
        return sequence;
    }

    private long then(Event event) {
        return after(60, event);
    }

    private StudyState state() {
        return StudyState.fold(entries);
    }

    private static TrialRecorded trial(int position, int session, double score) {
        return new TrialRecorded(position, session, position, Map.of("ambient", "room"), score, "frames/s", List.of(), Optional.empty(),
                OffsetDateTime.parse("2026-01-14T09:30:00+01:00"), 240, Source.MANUAL);
    }

    private static SessionOpened opened(int session) {
        return new SessionOpened(session, Map.of("ambient", "room"), "");
    }

    private List<Double> scores() {
        return state().trials().stream().map(Trial::score).toList();
    }

    private List<Oddity.Kind> oddities() {
        return state().oddities().stream().map(Oddity::kind).toList();
    }

    private List<String> deviationCodes() {
        return state().deviations().stream().map(Deviation::code).toList();
    }

    @Test
    void anEmptyJournalIsAStudyThatHasNotBegun() {
        assertEquals(0, state().lastSequence());
        assertEquals(Set.of(), state().settled());
        assertEquals(Optional.empty(), state().planDigest());
    }

    @Test
    void anUndoneTrialIsOpenAgain() {
        then(opened(1));
        then(trial(1, 1, 48));
        long wrong = then(trial(2, 1, 480));
        then(new TrialUndone(wrong, "wrong key"));
        assertEquals(List.of(48.0), scores());
        assertEquals(Set.of(1), state().settled());
        assertEquals(List.of(Deviation.UNDONE), deviationCodes());
    }

    @Test
    void anUndoneUndoMakesTheTrialCountAgain() {
        then(opened(1));
        long trial = then(trial(1, 1, 48));
        long undo = then(new TrialUndone(trial, ""));
        then(new TrialUndone(undo, "it was right after all"));
        assertEquals(List.of(48.0), scores());
        assertEquals(List.of(), deviationCodes());
    }

    @Test
    void aTrialUndoneAndRunAgainCountsWithItsNewScore() {
        then(opened(1));
        long wrong = then(trial(1, 1, 480));
        then(new TrialUndone(wrong, ""));
        then(trial(1, 1, 48));
        assertEquals(List.of(48.0), scores());
        assertEquals(List.of(), oddities());
    }

    @Test
    void theLastCorrectionCountsAndBothScoresStay() {
        then(opened(1));
        long wrong = then(trial(1, 1, 84));
        then(new TrialCorrected(wrong, 47, "digits swapped"));
        long second = then(new TrialCorrected(wrong, 48, "read again"));
        assertEquals(List.of(48.0), scores());
        assertEquals(84, state().trials().get(0).recorded().score());
        then(new TrialUndone(second, ""));
        assertEquals(List.of(47.0), scores());
    }

    @Test
    void aCorrectionOfATrialTakenBackGoesWithIt() {
        then(opened(1));
        long wrong = then(trial(1, 1, 84));
        then(new TrialCorrected(wrong, 48, "digits swapped"));
        then(new TrialUndone(wrong, ""));
        then(trial(1, 1, 50));
        assertEquals(List.of(50.0), scores());
    }

    @Test
    void aCorrectionOfAnythingButATrialIsSaid() {
        long session = then(opened(1));
        long correction = then(new TrialCorrected(session, 48, "digits swapped"));
        assertEquals(List.of(new Oddity(Oddity.Kind.WRONG_TARGET, correction, "entry 2 corrects entry 1, which is not an earlier trial")),
                state().oddities());
    }

    @Test
    void anUndoOfASessionIsSaidAndIgnored() {
        long session = then(opened(1));
        then(new TrialUndone(session, ""));
        assertEquals(List.of(Oddity.Kind.WRONG_TARGET), oddities());
        assertTrue(state().openSession().isPresent());
    }

    @Test
    void aSkippedPositionIsNotAskedForAgain() {
        then(opened(1));
        then(new TrialSkipped(1, "the fan rattled"));
        assertEquals(Set.of(1), state().settled());
        assertEquals(Map.of(1, "the fan rattled"), state().skipped());
        assertEquals(List.of(Deviation.TRIAL_SKIPPED), deviationCodes());
    }

    @Test
    void aSkippedTrialRunLaterCounts() {
        then(opened(1));
        then(new TrialSkipped(1, "the fan rattled"));
        then(trial(2, 1, 49));
        then(trial(1, 1, 48));
        assertEquals(Map.of(), state().skipped());
        assertEquals(Set.of(1, 2), state().settled());
        assertEquals(List.of(Deviation.TRIAL_SKIPPED, Deviation.OUT_OF_ORDER), deviationCodes());
    }

    @Test
    void theFirstOfTwoTrialsAtOnePositionStandsAndTheOtherIsSaid() {
        then(opened(1));
        then(trial(1, 1, 48));
        then(trial(1, 1, 50));
        assertEquals(List.of(48.0), scores());
        assertEquals(List.of(Oddity.Kind.POSITION_TAKEN), oddities());
    }

    @Test
    void aSessionLastsFromOpeningToClosingByTheMonotonicClock() {
        then(opened(1));
        after(240, trial(1, 1, 48));
        now = now.minusHours(1); // somebody sets the clock
        after(100, new SessionClosed(1, SessionClosed.Ending.DONE, ""));
        Session session = state().sessions().get(0);
        assertEquals(new Elapsed(340, true), session.elapsed());
        assertEquals(Optional.of(SessionClosed.Ending.DONE), session.ending());
        assertEquals(List.of(Oddity.Kind.CLOCK_SET_BACK), oddities());
    }

    @Test
    void theTimeUntilGoingOnAfterABreakIsNotBenchTime() {
        then(opened(1));
        after(240, trial(1, 1, 48));
        after(10, new Paused("tea"));
        assertTrue(state().paused());
        after(3600, new Resumed(""));
        after(250, trial(2, 1, 48));
        assertEquals(new Elapsed(500, true), state().sessions().get(0).elapsed());
    }

    @Test
    void aSessionGoneOnWithInAnotherProcessIsTimedByTheWallClock() {
        then(opened(1));
        process = "second";
        monotonicSeconds = 0;
        after(300, trial(1, 1, 48));
        assertEquals(new Elapsed(300, false), state().sessions().get(0).elapsed());
        assertEquals(List.of(), oddities());
    }

    @Test
    void aPausedSessionMayBeOpenedAgain() {
        then(opened(1));
        then(new SessionClosed(1, SessionClosed.Ending.PAUSED, "dusk"));
        assertTrue(state().paused());
        then(opened(1));
        assertEquals(1, state().openSession().orElseThrow().number());
        assertEquals(List.of(), oddities());
    }

    @Test
    void aSessionOpenedWhileAnotherIsOpenIsSaid() {
        then(opened(1));
        then(opened(2));
        assertEquals(List.of(Oddity.Kind.SESSION_OUT_OF_TURN), oddities());
        assertEquals(2, state().openSession().orElseThrow().number());
    }

    @Test
    void aTrialOfASessionThatIsNotOpenIsSaidAndCounts() {
        then(opened(1));
        then(trial(1, 2, 48));
        assertEquals(List.of(Oddity.Kind.SESSION_OUT_OF_TURN), oddities());
        assertEquals(List.of(48.0), scores());
    }

    @Test
    void trialsOfAnImportedTableNeedNoSession() {
        then(new ImportedTable("trials.csv", "ab", 1));
        then(trial(1, 1, 48));
        assertEquals(List.of(), oddities());
    }

    @Test
    void daylightSavingIsToldFromAClockSetBack() {
        then(opened(1));
        now = now.withOffsetSameInstant(ZoneOffset.ofHours(2));
        then(trial(1, 1, 48));
        assertEquals(List.of(Oddity.Kind.ZONE_CHANGED), oddities());
    }

    @Test
    void aComputerThatSleptIsSaid() {
        then(opened(1));
        now = now.plusMinutes(20); // the monotonic clock stood still
        then(trial(1, 1, 48));
        assertEquals(List.of(Oddity.Kind.CLOCK_RAN_AHEAD), oddities());
    }

    @Test
    void aSecondComputerWhoseClockIsBehindIsSaid() {
        then(opened(1));
        process = "second";
        monotonicSeconds = 0;
        now = now.minusMinutes(10);
        then(trial(1, 1, 48));
        assertEquals(List.of(Oddity.Kind.CLOCK_SET_BACK), oddities());
    }

    @Test
    void missingEntriesAreCounted() {
        then(opened(1));
        then(trial(1, 1, 48));
        then(trial(2, 1, 48));
        entries.remove(1);
        assertEquals("1 entry is missing before entry 3", state().oddities().get(0).text());
    }

    @Test
    void anAmendedPlanIsTheOneInForceAndADeviation() {
        then(new PlanFrozen("aa", Optional.empty()));
        then(new PlanAmended("bb", Optional.empty(), "quieter than thought"));
        assertEquals(Optional.of("bb"), state().planDigest());
        assertEquals(List.of(Deviation.PLAN_AMENDED), deviationCodes());
    }

    @Test
    void anotherPlanFrozenIsSaid() {
        then(new PlanFrozen("aa", Optional.empty()));
        then(new PlanFrozen("bb", Optional.empty()));
        assertEquals(List.of(Oddity.Kind.PLAN_FROZEN_AGAIN), oddities());
    }

    @Test
    void anEventOfANewerVersionIsKeptAndSaid() {
        then(new UnknownEvent("battery-swapped", "{}"));
        assertEquals(List.of(Oddity.Kind.UNKNOWN_KIND), oddities());
        assertEquals(1, state().lastSequence());
    }

    @Test
    void aNoteAboutAnEntryThatIsNotThereIsKeptAndSaid() {
        then(new NoteAdded("odd smell", OptionalLong.of(9)));
        assertEquals(1, state().notes().size());
        assertEquals(List.of(Oddity.Kind.WRONG_TARGET), oddities());
    }

    @Test
    void everyDepartureFromThePlanIsListed() {
        then(opened(1));
        then(new StartConditionsChecked(1, OptionalInt.empty(), Map.of(), List.of("battery at 38 %", "die at 52 °C")));
        then(new DeviationNoted("soaked 12 min", "soak-too-short"));
        then(new RuleLoosened("storage-range", "the maker's sheet allows it"));
        then(new SessionClosed(1, SessionClosed.Ending.ABORTED, "sleet"));
        assertEquals(List.of(Deviation.START_CONDITION, Deviation.START_CONDITION, "soak-too-short", Deviation.RULE_LOOSENED,
                Deviation.SESSION_ABORTED), deviationCodes());
    }
}
