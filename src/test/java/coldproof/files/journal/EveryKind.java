package coldproof.files.journal;

import coldproof.study.CautionAcknowledged;
import coldproof.study.CautionShown;
import coldproof.study.DeviationNoted;
import coldproof.study.Event;
import coldproof.study.ImportedTable;
import coldproof.study.JournalBegun;
import coldproof.study.JournalMended;
import coldproof.study.JournalsMerged;
import coldproof.study.LookTaken;
import coldproof.study.NoiseCarriedIn;
import coldproof.study.NoteAdded;
import coldproof.study.Observed;
import coldproof.study.Paused;
import coldproof.study.PlanAmended;
import coldproof.study.PlanFrozen;
import coldproof.study.Resumed;
import coldproof.study.RuleLoosened;
import coldproof.study.SessionClosed;
import coldproof.study.SessionOpened;
import coldproof.study.Source;
import coldproof.study.StartConditionsChecked;
import coldproof.study.StudySimulated;
import coldproof.study.TrialCorrected;
import coldproof.study.TrialRecorded;
import coldproof.study.TrialSkipped;
import coldproof.study.TrialUndone;
import coldproof.study.UnknownEvent;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;

/** Events of every kind, in an invented study of a trail laptop. */
final class EveryKind {
    private EveryKind() {}

    static List<Event> events() {
        Map<String, Observed> readings = new LinkedHashMap<>();
        readings.put("die temperature", Observed.of(41.25, "°C"));
        readings.put("battery", Observed.of(87, "%").by("BAT0"));
        readings.put("power source", Observed.of("wall").by("power supply"));
        return List.of(
                new JournalBegun(1, "5e17ab"),
                new PlanFrozen("00ff".repeat(16), Optional.of("title: \"chilled\"\nmatters: 3 %\n")),
                new PlanFrozen("00ff".repeat(16), Optional.empty()),
                new PlanAmended("11ee".repeat(16), Optional.of("matters: 2 %"), "the first pilot was quieter"),
                new PlanAmended("11ee".repeat(16), Optional.empty(), "typing mistake"),
                new NoiseCarriedIn(1.2, 0.8, 14, 3.5, "pilot"),
                new StudySimulated("rehearsal, seed 20260114"),
                new ImportedTable("trials früher.csv", "ab".repeat(32), 40),
                new SessionOpened(1, levels("chilled"), "balcony, no wind"),
                new SessionOpened(2, Map.of(), ""),
                new StartConditionsChecked(1, OptionalInt.of(3), readings, List.of("battery at 38 %, at least 40 % wanted")),
                new StartConditionsChecked(1, OptionalInt.empty(), Map.of(), List.of()),
                trial(1, 48.3125),
                new TrialRecorded(2, 1, 2, levels("chilled"), -1e-7, "", List.of(50.5, 49.75, 49.0), Optional.of("traces/trial 2.csv"),
                        OffsetDateTime.parse("2026-01-14T09:31:07.045+01:00"), 241.372, Source.RECORDED),
                new TrialSkipped(3, "the fan rattled"),
                new TrialUndone(13, "wrong key"),
                new TrialCorrected(14, 49.5, "two digits swapped"),
                new NoteAdded("snow began: \u001b[31mred\u001b[0m \u202e \u0085 \ud800 \ud83e\uddca \"quoted\" \\ \t\n end",
                        OptionalLong.of(14)),
                new NoteAdded("gloves on", OptionalLong.empty()),
                new DeviationNoted("soaked 12 min instead of 20", "soak-too-short"),
                new CautionShown("cell-below-freezing", "charging", "stop", readings),
                new CautionAcknowledged("condensation", "in", "care", "bench two", readings),
                new RuleLoosened("storage-range", "the maker's sheet of unit 2 says -25 °C"),
                new LookTaken(1, 2.31, 2.797, "go on"),
                new Paused("tea"),
                new Resumed(""),
                new SessionClosed(1, SessionClosed.Ending.DONE, ""),
                new SessionClosed(2, SessionClosed.Ending.ABORTED, "sleet"),
                new SessionClosed(3, SessionClosed.Ending.PAUSED, "dusk"),
                new JournalMended("the last line was cut short", Optional.of("journal.jsonl.torn-12")),
                new JournalsMerged(12, 3, 4, List.of("position 5 was recorded in both: the first stands")),
                new UnknownEvent("battery-swapped", "{\"cells\":[1,2,{\"deep\":null}],\"by\":\"café\"}"));
    }

    static Map<String, String> levels(String ambient) {
        Map<String, String> levels = new LinkedHashMap<>();
        levels.put("ambient", ambient);
        levels.put("fan", "maximum");
        return levels;
    }

    static TrialRecorded trial(int position, double score) {
        return new TrialRecorded(position, 1, position, levels("chilled"), score, "frames/s", List.of(), Optional.empty(),
                OffsetDateTime.parse("2026-01-14T09:31:07+01:00"), 240, Source.MANUAL);
    }
}
