package coldproof.files.journal;

import coldproof.quantity.ConstantWord;
import coldproof.study.CautionAcknowledged;
import coldproof.study.CautionShown;
import coldproof.study.DeviationNoted;
import coldproof.study.Event;
import coldproof.study.EventKind;
import coldproof.study.ImportedTable;
import coldproof.study.JournalBegun;
import coldproof.study.JournalMended;
import coldproof.study.JournalsMerged;
import coldproof.study.LookTaken;
import coldproof.study.NoiseCarriedIn;
import coldproof.study.NoteAdded;
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
import java.time.format.DateTimeFormatter;

/** The {@code data} of each kind of event, to text and back. Optional fields are left out when empty, never written as null. */
final class Payload {
    private Payload() {}

    static String time(OffsetDateTime time) {
        return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(time);
    }

    static void write(StringBuilder out, Event event) {
        if (event instanceof UnknownEvent unknown) {
            out.append(unknown.data());
            return;
        }
        JsonText json = new JsonText(out);
        write(json, event);
        json.end();
    }

    private static void write(JsonText json, Event event) {
        switch (event.kind()) { // no default: a new kind must be thought about here
            case JOURNAL_BEGUN -> begun(json, (JournalBegun) event);
            case PLAN_FROZEN -> frozen(json, (PlanFrozen) event);
            case PLAN_AMENDED -> amended(json, (PlanAmended) event);
            case NOISE_CARRIED_IN -> noise(json, (NoiseCarriedIn) event);
            case STUDY_SIMULATED -> json.text("text", ((StudySimulated) event).text());
            case IMPORTED_TABLE -> imported(json, (ImportedTable) event);
            case SESSION_OPENED -> opened(json, (SessionOpened) event);
            case SESSION_CLOSED -> closed(json, (SessionClosed) event);
            case PAUSED -> json.text("reason", ((Paused) event).reason());
            case RESUMED -> json.text("note", ((Resumed) event).note());
            case START_CONDITIONS_CHECKED -> conditions(json, (StartConditionsChecked) event);
            case TRIAL_RECORDED -> trial(json, (TrialRecorded) event);
            case TRIAL_SKIPPED -> json.whole("position", ((TrialSkipped) event).position()).text("reason", ((TrialSkipped) event).reason());
            case TRIAL_UNDONE -> json.whole("entry", ((TrialUndone) event).sequence()).text("reason", ((TrialUndone) event).reason());
            case TRIAL_CORRECTED -> corrected(json, (TrialCorrected) event);
            case NOTE_ADDED -> note(json, (NoteAdded) event);
            case DEVIATION_NOTED -> json.text("code", ((DeviationNoted) event).code()).text("text", ((DeviationNoted) event).text());
            case CAUTION_SHOWN -> shown(json, (CautionShown) event);
            case CAUTION_ACKNOWLEDGED -> acknowledged(json, (CautionAcknowledged) event);
            case RULE_LOOSENED -> json.text("rule", ((RuleLoosened) event).rule()).text("reason", ((RuleLoosened) event).reason());
            case LOOK_TAKEN -> look(json, (LookTaken) event);
            case JOURNAL_MENDED -> mended(json, (JournalMended) event);
            case JOURNALS_MERGED -> merged(json, (JournalsMerged) event);
            case UNKNOWN -> throw new IllegalArgumentException("an unknown kind is written as it was read");
        }
    }

    private static void begun(JsonText json, JournalBegun event) {
        json.whole("format", event.format()).text("study", event.study());
    }

    private static void frozen(JsonText json, PlanFrozen event) {
        json.text("digest", event.digest());
        event.planText().ifPresent(text -> json.text("plan", text));
    }

    private static void amended(JsonText json, PlanAmended event) {
        json.text("digest", event.digest()).text("reason", event.reason());
        event.planText().ifPresent(text -> json.text("plan", text));
    }

    private static void noise(JsonText json, NoiseCarriedIn event) {
        json.number("runCvPercent", event.runCvPercent()).number("sessionCvPercent", event.sessionCvPercent())
                .number("runDegreesOfFreedom", event.runDegreesOfFreedom())
                .number("sessionDegreesOfFreedom", event.sessionDegreesOfFreedom()).text("from", event.from());
    }

    private static void imported(JsonText json, ImportedTable event) {
        json.text("file", event.file()).text("digest", event.digest()).whole("rows", event.rows());
    }

    private static void opened(JsonText json, SessionOpened event) {
        json.whole("session", event.session()).words("levels", event.levels()).text("note", event.note());
    }

    private static void closed(JsonText json, SessionClosed event) {
        json.whole("session", event.session()).text("ending", ConstantWord.of(event.ending())).text("reason", event.reason());
    }

    private static void conditions(JsonText json, StartConditionsChecked event) {
        json.whole("session", event.session());
        event.position().ifPresent(position -> json.whole("position", position));
        json.readings("readings", event.readings()).texts("deviations", event.deviations());
    }

    private static void trial(JsonText json, TrialRecorded event) {
        json.whole("position", event.position()).whole("session", event.session()).whole("order", event.orderInSession())
                .words("levels", event.levels()).number("score", event.score()).text("unit", event.unit());
        if (!event.loops().isEmpty()) {
            json.numbers("loops", event.loops());
        }
        event.trace().ifPresent(path -> json.text("trace", path));
        json.text("startedAt", time(event.startedAt())).number("elapsedSeconds", event.elapsedSeconds())
                .text("source", ConstantWord.of(event.source()));
    }

    private static void corrected(JsonText json, TrialCorrected event) {
        json.whole("entry", event.sequence()).number("score", event.score()).text("reason", event.reason());
    }

    private static void note(JsonText json, NoteAdded event) {
        json.text("text", event.text());
        event.about().ifPresent(sequence -> json.whole("entry", sequence));
    }

    private static void shown(JsonText json, CautionShown event) {
        json.text("rule", event.rule()).text("phase", event.phase()).text("level", event.level())
                .readings("conditions", event.conditions());
    }

    private static void acknowledged(JsonText json, CautionAcknowledged event) {
        json.text("rule", event.rule()).text("phase", event.phase()).text("level", event.level()).text("by", event.by())
                .readings("conditions", event.conditions());
    }

    private static void look(JsonText json, LookTaken event) {
        json.whole("look", event.look()).number("statistic", event.statistic()).number("bound", event.bound())
                .text("decision", event.decision());
    }

    private static void mended(JsonText json, JournalMended event) {
        json.text("text", event.text());
        event.savedAs().ifPresent(file -> json.text("savedAs", file));
    }

    private static void merged(JsonText json, JournalsMerged event) {
        json.whole("common", event.common()).whole("fromFirst", event.fromFirst()).whole("fromSecond", event.fromSecond())
                .texts("resolved", event.resolved());
    }

    /** The event of a known kind; an {@code IllegalArgumentException} says which field is wrong. */
    static Event read(EventKind kind, Fields data) {
        return switch (kind) { // no default: a new kind must be thought about here
            case JOURNAL_BEGUN -> new JournalBegun(data.count("format"), data.text("study"));
            case PLAN_FROZEN -> new PlanFrozen(data.text("digest"), data.perhapsText("plan"));
            case PLAN_AMENDED -> new PlanAmended(data.text("digest"), data.perhapsText("plan"), data.text("reason"));
            case NOISE_CARRIED_IN -> new NoiseCarriedIn(data.number("runCvPercent"), data.number("sessionCvPercent"),
                    data.number("runDegreesOfFreedom"), data.number("sessionDegreesOfFreedom"), data.text("from"));
            case STUDY_SIMULATED -> new StudySimulated(data.text("text"));
            case IMPORTED_TABLE -> new ImportedTable(data.text("file"), data.text("digest"), data.count("rows"));
            case SESSION_OPENED -> new SessionOpened(data.count("session"), data.words("levels"), data.text("note"));
            case SESSION_CLOSED -> new SessionClosed(data.count("session"), data.choice("ending", SessionClosed.Ending.class),
                    data.text("reason"));
            case PAUSED -> new Paused(data.text("reason"));
            case RESUMED -> new Resumed(data.text("note"));
            case START_CONDITIONS_CHECKED -> new StartConditionsChecked(data.count("session"), data.perhapsCount("position"),
                    data.readings("readings"), data.texts("deviations"));
            case TRIAL_RECORDED -> readTrial(data);
            case TRIAL_SKIPPED -> new TrialSkipped(data.count("position"), data.text("reason"));
            case TRIAL_UNDONE -> new TrialUndone(data.whole("entry"), data.text("reason"));
            case TRIAL_CORRECTED -> new TrialCorrected(data.whole("entry"), data.number("score"), data.text("reason"));
            case NOTE_ADDED -> new NoteAdded(data.text("text"), data.perhapsWhole("entry"));
            case DEVIATION_NOTED -> new DeviationNoted(data.text("text"), data.text("code"));
            case CAUTION_SHOWN -> new CautionShown(data.text("rule"), data.text("phase"), data.text("level"), data.readings("conditions"));
            case CAUTION_ACKNOWLEDGED -> new CautionAcknowledged(data.text("rule"), data.text("phase"), data.text("level"),
                    data.text("by"), data.readings("conditions"));
            case RULE_LOOSENED -> new RuleLoosened(data.text("rule"), data.text("reason"));
            case LOOK_TAKEN -> new LookTaken(data.count("look"), data.number("statistic"), data.number("bound"), data.text("decision"));
            case JOURNAL_MENDED -> new JournalMended(data.text("text"), data.perhapsText("savedAs"));
            case JOURNALS_MERGED -> new JournalsMerged(data.whole("common"), data.whole("fromFirst"), data.whole("fromSecond"),
                    data.texts("resolved"));
            case UNKNOWN -> throw new IllegalArgumentException("an unknown kind is kept as it was read");
        };
    }

    private static TrialRecorded readTrial(Fields data) {
        return new TrialRecorded(data.count("position"), data.count("session"), data.count("order"), data.words("levels"),
                data.number("score"), data.text("unit"), data.perhapsNumbers("loops"), data.perhapsText("trace"), data.time("startedAt"),
                data.number("elapsedSeconds"), data.choice("source", Source.class));
    }
}
