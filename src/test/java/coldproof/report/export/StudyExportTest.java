package coldproof.report.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.files.plan.PlanReader;
import coldproof.files.table.Table;
import coldproof.files.table.TableReader;
import coldproof.plan.Plan;
import coldproof.report.json.ExportJson;
import coldproof.study.Entry;
import coldproof.study.Event;
import coldproof.study.Observed;
import coldproof.study.Source;
import coldproof.study.StartConditionsChecked;
import coldproof.study.StudyState;
import coldproof.study.TrialCorrected;
import coldproof.study.TrialRecorded;
import coldproof.study.TrialSkipped;
import coldproof.study.TrialUndone;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class StudyExportTest {
    private static final String PLAN = """
            coldproof: 1
            title: Does the stand lift the render rate?
            device: trail laptop, unit 2
            metric: {name: render rate, unit: frames/s, better: higher}
            compare: {factor: lid stand, baseline: flat, against: raised}
            matters: 3 %
            factors:
              lid stand: {change: per trial, levels: [flat, raised]}
              session: {change: per trial, levels: ["=2+5", "-1"]}
            layout: {trials: 4, order: counterbalanced}
            seed: 7
            """;
    private final Plan plan = PlanReader.read("plan.yaml", PLAN);

    private static TrialRecorded trial(int position, String stand, String second, double score, List<Double> loops) {
        Map<String, String> levels = new LinkedHashMap<>();
        levels.put("lid stand", stand);
        levels.put("session", second);
        return new TrialRecorded(position, 1, position, levels, score, "frames/s", loops, Optional.of("traces/a,b.csv"),
                OffsetDateTime.parse("2026-01-14T09:31:07+01:00"), 240.5, Source.MANUAL);
    }

    private static StudyState state() {
        List<Event> events = List.of(trial(1, "flat", "=2+5", 48.25, List.of(48.5, 48.0)),
                new StartConditionsChecked(1, OptionalInt.of(2), Map.of("die temperature", Observed.of(41.5, "°C")), List.of()),
                trial(2, "raised\u001b[2J", "-1", 50.5, List.of()), new TrialCorrected(3, 51.5, "digits swapped"),
                trial(3, "flat", "-1", 1, List.of()), new TrialUndone(5, "wrong key"), new TrialSkipped(4, "the \"fan\" rattled; loudly"));
        List<Entry> entries = new ArrayList<>();
        events.forEach(event -> entries.add(new Entry(entries.size() + 1, OffsetDateTime.parse("2026-01-14T09:31:07+01:00"), 0, "a", event)));
        return StudyState.fold(entries);
    }

    private TidyTable table(String name) {
        return StudyExport.tables(plan, state()).stream().filter(table -> table.name().equals(name)).findFirst().orElseThrow();
    }

    @Test
    void aTrialIsARowAndEveryRowReadsBack() {
        Table read = TableReader.read("trials.csv", CsvText.of(table("trials")).getBytes(StandardCharsets.UTF_8));
        assertEquals(2, read.rows().size(), "the trial taken back and the one skipped are not there");
        double[] scores = read.numbers(read.column("score", "score"));
        assertEquals(48.25, scores[0]);
        assertEquals(51.5, scores[1], "the correction counts");
        assertEquals("50.5", read.rows().get(1).text(read.column("score_as_recorded", "column")));
        assertEquals("41.5", read.rows().get(1).text(read.column("start_die_temperature", "column")));
        assertEquals("", read.rows().get(0).text(read.column("start_die_temperature", "column")));
        assertEquals("flat", read.rows().get(0).text(read.column("lid_stand", "column")));
        assertEquals("traces/a,b.csv", read.rows().get(0).text(read.column("trace", "column")));
    }

    @Test
    void aFactorCalledLikeAColumnGetsANameOfItsOwn() {
        assertTrue(CsvText.of(table("trials")).startsWith("trial,session,order,lid_stand,level_session,score,"));
    }

    @Test
    void nothingInTheTextSteersATerminalOrASpreadsheet() {
        String csv = CsvText.of(table("trials"));
        assertTrue(csv.contains("'=2+5") && csv.contains("'-1"), csv);
        assertFalse(csv.contains("\u001b"), csv);
        assertTrue(CsvText.of(table("skipped")).endsWith("4,\"the \"\"fan\"\" rattled; loudly\"\n"));
    }

    @Test
    void theJsonHasTheTextAsItIs() {
        String json = ExportJson.of(StudyExport.tables(plan, state())).toText();
        assertTrue(json.contains("\"level_session\":\"=2+5\"") && json.contains("\"score\":48.25"), json);
        assertTrue(json.contains("\"start_die_temperature\":null"), json);
    }

    @Test
    void everyColumnIsInTheDictionaryWithItsUnit() {
        List<TidyTable> tables = StudyExport.tables(plan, state());
        int columns = tables.stream().filter(table -> !table.name().equals("dictionary")).mapToInt(table -> table.columns().size()).sum();
        assertEquals(columns, table("dictionary").rows().size());
        assertTrue(CsvText.of(table("dictionary")).contains("trials,start_die_temperature,number,°C,"));
        assertTrue(CsvText.of(table("loops")).equals("trial,loop,result\n1,1,48.5\n1,2,48.0\n"));
    }
}
