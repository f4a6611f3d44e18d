package coldproof.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.plan.Position;
import coldproof.reason.looks.LookCost;
import coldproof.reason.looks.LookPoint;
import coldproof.reason.looks.LookSchedule;
import coldproof.reason.sizing.SizingAnswer;
import coldproof.reason.verdict.Compared;
import coldproof.reason.verdict.Decision;
import coldproof.reason.verdict.LookReport;
import coldproof.reason.verdict.Word;
import coldproof.report.json.VerdictJson;
import coldproof.report.text.ComparisonsText;
import coldproof.stats.Tail;
import coldproof.stats.sequential.SequentialBoundary;
import coldproof.stats.sequential.Spending;
import coldproof.study.Deviation;
import coldproof.study.LookTaken;
import coldproof.study.Numbered;
import coldproof.study.Source;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A study of the invented workshop whose plan has a look before the end: sessions 6 of 8, then all. */
class StudyLooksTest {
    @TempDir
    Path folder;

    private TestBench bench;

    @BeforeEach
    void freeze() {
        bench = new TestBench(folder.resolve("study"), ReadyPlans.text("chilled-air").replace("looks: 1", "looks: 2"));
    }

    private StudyView view() {
        return StudyView.read(bench.folder());
    }

    /** Runs the next sessions with a true gain; a session's luck and a trial's depend on their places alone. */
    private void run(int from, int to, double gain) {
        run(from, to, gain, 0.006);
    }

    private void run(int from, int to, double gain, double noise) {
        try (BenchStudy study = BenchStudy.open(bench.folder(), bench.machine())) {
            for (int session = from; session <= to; session++) {
                for (Position position : study.view().sheet().ofSession(session)) {
                    double luck = noise * Math.sin(5.1 * session) + noise * Math.sin(7.3 * position.number());
                    double score = 40 * Math.exp(luck) * (position.levels().get("ambient").equals("chilled") ? 1 + gain : 1);
                    study.record(position, score, List.of(), Optional.empty(), OffsetDateTime.parse("2026-01-14T12:00:00Z"), 60, Source.SIMULATED);
                }
            }
        }
    }

    private Compared verdict() {
        return VerdictJob.ofStudy(view()).get(0).compared();
    }

    @Test
    void theLookLiesWhereBothLevelsHaveTwoSessions() {
        List<LookPoint> points = LookSchedule.of(view().plan(), view().sheet()).points();
        assertEquals(List.of(6, 8), points.stream().map(LookPoint::units).toList());
        assertEquals(0.75, points.get(0).fraction(), 1e-12); // 3 + 3 of 4 + 4 sessions
        assertEquals(4, points.get(0).degreesOfFreedom());
    }

    @Test
    void nothingIsDecidedBeforeTheFirstLook() {
        run(1, 5, 0.2);
        Compared early = verdict();
        assertEquals(Word.UNDECIDED, early.verdict().word());
        assertTrue(early.verdict().reason().contains("first look after session 6 of 8"), early.verdict().reason());
        assertTrue(early.verdict().estimate().isEmpty() && early.verdict().bare().isEmpty() && early.verdict().interval().isEmpty(), "shown, it would be a look");
        assertTrue(early.looks().orElseThrow().taken().isEmpty());
    }

    @Test
    void aClearGainStopsTheStudyAtItsLookAndStandsUntilTheNext() {
        run(1, 6, 0.06);
        Compared look = verdict();
        LookReport report = look.looks().orElseThrow();
        assertEquals(Word.GAIN, look.verdict().word());
        SequentialBoundary boundary = SequentialBoundary.spending(Spending.OBRIEN_FLEMING_LIKE, 0.05, Tail.TWO, 0.75);
        assertEquals(1 - boundary.nominalP(0), look.verdict().interval().orElseThrow().level(), 1e-12);
        assertEquals(boundary.spent(0), report.taken().get(0).spent(), 1e-15);
        assertEquals(1, report.decidedAt().orElseThrow().number());
        LookReport.Adjusted adjusted = report.adjusted().orElseThrow();
        assertEquals(look.verdict().estimate().orElseThrow().log(), adjusted.log(), 1e-9); // stopped at the first look: nothing to allow for
        assertEquals(0.95, adjusted.interval().level(), 1e-12);
        run(7, 7, -0.5);
        assertEquals(look.verdict().interval(), verdict().verdict().interval()); // between looks the verdict is that of the look
    }

    @Test
    void theLastLookSpendsWhatIsLeft() {
        run(1, 8, 0.022);
        Compared end = verdict();
        LookReport report = end.looks().orElseThrow();
        assertEquals(2, report.taken().size());
        assertEquals(0.05, report.taken().get(1).spent(), 1e-15);
        assertTrue(end.verdict().interval().orElseThrow().level() > 0.955, "a little less than 5 % is left: " + end.verdict().interval());
        assertEquals("", report.next());
    }

    @Test
    void whatCannotComeRightIsCalledFutileAndStaysUndecided() {
        run(1, 6, 0.02, 0.03); // the luck of the sessions is against it: about -2 % is seen
        Compared look = verdict();
        assertEquals(Decision.UNDECIDED, look.verdict().decision());
        assertTrue(look.looks().orElseThrow().isFutile(), look.looks().toString());
        assertFalse(look.looks().orElseThrow().adjusted().isPresent());
    }

    @Test
    void theLooksAreInTextAndJson() {
        run(1, 6, 0.06);
        String text = ComparisonsText.of(List.of(verdict()), List.of(), 80);
        assertTrue(text.contains("Looks: 1 of 2 taken"), text);
        assertTrue(text.lines().allMatch(line -> line.length() <= 80), text);
        String json = VerdictJson.of(List.of(verdict()), List.of()).toText();
        assertTrue(json.contains("\"looks\":{\"planned\":2,\"spending\":\"obrien-fleming-like\",\"taken\":[{\"look\":1,\"units\":6,"), json);
    }

    @Test
    void aPlanWithLooksIsSizedWithThem() {
        SizingAnswer answer = RunsJob.ofStudy(view());
        LookCost cost = answer.looks().orElseThrow();
        assertEquals(2, cost.looks().size());
        assertTrue(cost.inflation() > 1 && cost.inflation() < 1.03, "inflation " + cost.inflation());
        assertTrue(cost.power() < answer.size().orElseThrow().power());
    }

    private List<String> written() {
        StudyView view = view();
        return LookRecord.write(view, VerdictJob.ofStudy(view), bench.machine());
    }

    @Test
    void aLookIsWrittenOnceWhenItIsTakenAndStandsInTheReport() throws IOException {
        run(1, 5, 0.06);
        assertEquals(List.of(), written());
        run(6, 6, 0.06);
        assertEquals(List.of("Look 1 is taken. Recorded."), written());
        assertEquals(List.of(), written(), "the same look shows the same");
        run(7, 7, 0.06);
        assertEquals(List.of(), written(), "between looks there is nothing to see");
        LookReport.Look seen = verdict().looks().orElseThrow().taken().get(0);
        assertEquals(List.of(new LookTaken(1, seen.t(), seen.bound(), "gain")), view().state().looks().stream().map(Numbered::event).toList());
        ReportJob.Request request = new ReportJob.Request(bench.folder(), ReportJob.Format.TEXT, Optional.empty(), false);
        String report = Files.readString(ReportJob.write(request, read -> {})).replaceAll("\\s+", " ");
        assertTrue(report.contains("Look 1 was taken before the end: entry " + view().state().looks().get(0).sequence() + " of the journal"), report);
        run(8, 8, 0.06);
        assertEquals(List.of(), written(), "the last look is the verdict itself");
    }

    @Test
    void aLookThatCannotBeWrittenIsSaidAndWrittenLater() {
        run(1, 6, 0.06);
        try (BenchStudy held = BenchStudy.open(bench.folder(), bench.machine())) {
            assertTrue(written().get(0).startsWith("Look 1 could not be recorded: "));
            assertTrue(held.view().state().looks().isEmpty());
        }
        assertEquals(List.of("Look 1 is taken. Recorded."), written());
    }

    private List<String> lookedAtAll() {
        return LookRecord.ofAllTrials(bench.folder(), bench.machine());
    }

    @Test
    void whoeverSeesAllTrialsAtALookTakesThatLook() {
        run(1, 6, 0.06);
        assertEquals(List.of("Look 1 is taken. Recorded."), lookedAtAll());
        assertEquals(List.of(), lookedAtAll());
        assertEquals(List.of(), view().state().deviations());
    }

    @Test
    void whoeverSeesTrialsBetweenLooksLeavesThePlan() {
        run(1, 5, 0.06);
        assertEquals(1, lookedAtAll().size());
        assertEquals(List.of(), lookedAtAll(), "the same trials were seen before");
        run(6, 7, 0.06);
        assertEquals(2, lookedAtAll().size(), "look 1, and the trials after it");
        List<String> deviations = VerdictJob.ofStudy(view()).get(0).deviations();
        assertEquals("the results were looked at after 20 of 32 trials, where the plan has no look", deviations.get(0));
        assertEquals("the results were looked at after 28 of 32 trials, where the plan has no look", deviations.get(1));
        run(8, 8, 0.06);
        assertEquals(List.of(), lookedAtAll(), "at the end everything may be seen");
    }

    @Test
    void aVerdictBeforeTheEndOfAPlanWithoutLooksIsADeviation() {
        bench = new TestBench(folder.resolve("one look"), ReadyPlans.text("chilled-air"));
        assertEquals(List.of(), written());
        run(1, 1, 0.06);
        assertEquals(List.of(), written(), "one level only: there is no difference to see");
        run(2, 5, 0.06);
        assertEquals(List.of("Recorded as a deviation: the results were looked at after 20 of 32 trials, where the plan has no look."), written());
        assertEquals(Deviation.UNPLANNED_LOOK, view().state().deviations().get(0).code());
        run(6, 8, 0.06);
        assertEquals(List.of(), written());
    }

    @Test
    void theIndexOfAllStudiesIsALookToo() {
        run(1, 6, 0.06);
        List<String> said = IndexJob.looks(folder, bench.machine());
        assertEquals(List.of(bench.folder() + ": Look 1 is taken. Recorded."), said);
    }

    /** A ledger with figures of this study, by condition; an empty one is of all trials. */
    private List<String> lookedAtInALedger(String first, String second) throws IOException {
        String ledger = "coldproof ledger: 1\ntitle: t\nreference: printed\nworkloads:\n  render: {unit: frames/s, better: higher}\ndevices:\n"
                + "  one: {figures: {render: {study: study" + first + "}}}\n  other: {figures: {render: {study: ../" + folder.getFileName() + "/study" + second + "}}}\n"
                + "  printed: {figures: {render: {value: 41, plus or minus: 1, source: a table}}}\n";
        return LedgerJob.looks(LedgerJob.of(Files.writeString(folder.resolve("ledger.yaml"), ledger), Optional.empty()), bench.machine());
    }

    @Test
    void aLedgerThatSetsTheComparedLevelsSideBySideIsALookToo() throws IOException {
        run(1, 6, 0.06);
        assertEquals(List.of(bench.folder() + ": Look 1 is taken. Recorded."), lookedAtInALedger(", condition: {ambient: room}", ", condition: {ambient: chilled}"));
        run(7, 7, 0.06);
        assertEquals(List.of(bench.folder() + ": Recorded as a deviation: the results were looked at after 28 of 32 trials, where the plan has no look."),
                lookedAtInALedger("", ", condition: {ambient: chilled}"), "all trials beside those of one level tell the other");
        assertEquals(List.of(), lookedAtInALedger(", condition: {ambient: room}", ", condition: {ambient: chilled}"), "the same was seen before");
    }

    @Test
    void aLedgerThatShowsNoChangeOfAStudyIsNoLook() throws IOException {
        run(1, 5, 0.06);
        assertEquals(List.of(), lookedAtInALedger("", ""));
        assertEquals(List.of(), lookedAtInALedger(", condition: {fan: auto}", ", condition: {fan: maximum}"), "the compared levels are mixed in both");
        assertEquals(List.of(), lookedAtInALedger(", condition: {ambient: room, fan: auto}", ", condition: {ambient: room}"));
        assertEquals(List.of(), view().state().deviations());
    }

    /** Cool air does nothing, chilled air a lot: chilled is decided at the look, cool is not, and each has its own estimate when it is. */
    @Test
    void eachOfSeveralChangesIsAdjustedForItsOwnLooks() {
        bench = new TestBench(folder.resolve("three"), ReadyPlans.text("chilled-air").replace("looks: 1", "looks: 2")
                .replace("against: chilled}", "against: [cool, chilled]}").replace("{room: 21 °C, chilled: -6 °C}", "{room: 21 °C, cool: 8 °C, chilled: -6 °C}")
                .replace("sessions: {room: 4, chilled: 4}", "sessions: {room: 4, cool: 4, chilled: 4}")
                .replace("set-up: {room: 5 min, chilled: 15 min}", "set-up: {room: 5 min, cool: 15 min, chilled: 15 min}"));
        int look = LookSchedule.of(view().plan(), view().sheet()).points().get(0).units();
        run(1, look, 0.2, 0.02);
        List<Compared> first = VerdictJob.ofStudy(view()).stream().map(VerdictJob.Answer::compared).toList();
        assertEquals(List.of(Word.UNDECIDED, Word.GAIN), first.stream().map(one -> one.verdict().word()).toList());
        assertTrue(first.get(0).looks().orElseThrow().adjusted().isEmpty(), "cool goes on");
        LookReport.Adjusted chilled = first.get(1).looks().orElseThrow().adjusted().orElseThrow();
        assertEquals(first.get(1).verdict().estimate().orElseThrow().log(), chilled.log(), 1e-9); // decided at the first look: nothing to allow for
        assertEquals(0.95, chilled.interval().level(), 1e-12);
        LookReport.Look seen = first.get(1).looks().orElseThrow().taken().get(0);
        SequentialBoundary alone = SequentialBoundary.spending(Spending.OBRIEN_FLEMING_LIKE, 0.05, Tail.TWO, seen.fraction());
        assertTrue(seen.nominalP() < alone.nominalP(0) && seen.nominalP() > alone.nominalP(0) / 2, "Dunnett's share lies between a half and the whole");
        run(look + 1, 12, 0.2, 0.02);
        List<Compared> end = VerdictJob.ofStudy(view()).stream().map(VerdictJob.Answer::compared).toList();
        assertEquals(chilled, end.get(1).looks().orElseThrow().adjusted().orElseThrow(), "decided before, so it stays");
        LookReport.Adjusted cool = end.get(0).looks().orElseThrow().adjusted().orElseThrow();
        assertEquals(2, cool.changes());
        String text = ComparisonsText.of(end, List.of(), 80).replaceAll("\\s+", " ");
        assertTrue(text.contains("Allowing for the looks and for 2 changes judged together the change is"), text);
    }
}
