package coldproof.report.page;

import coldproof.plan.Factor;
import coldproof.quantity.ConstantWord;
import coldproof.report.text.Figures;
import coldproof.study.Session;
import coldproof.study.Source;
import coldproof.study.Trial;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** Sessions, notes and the full table of trials. */
final class TrialsSection {
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

    private TrialsSection() {}

    static Section sessions(StudyContent content) {
        List<Block> blocks = new ArrayList<>();
        List<List<String>> rows = new ArrayList<>();
        for (Session session : content.state().sessions()) {
            long trials = content.state().trials().stream().filter(trial -> trial.recorded().session() == session.number()).count();
            String ending = session.ending().map(ConstantWord::of).orElse("open");
            rows.add(List.of(Integer.toString(session.number()), levels(session.levels()), minute(session.openedBy().at()), Long.toString(trials),
                    ending + (session.reason().isBlank() ? "" : ": " + session.reason()), session.note()));
        }
        if (rows.isEmpty()) {
            blocks.add(new Block.Prose("No session was opened yet."));
        } else {
            blocks.add(new Block.Grid("Sessions", List.of(Block.Column.numbers("session"), Block.Column.words("set to"), Block.Column.words("opened"),
                    Block.Column.numbers("trials"), Block.Column.words("ended"), Block.Column.words("note")), rows));
        }
        if (!content.state().notes().isEmpty()) {
            blocks.add(new Block.Prose("Notes made at the bench:"));
            blocks.add(new Block.Points(content.state().notes().stream().map(note -> note.event().text()).toList()));
        }
        if (!content.state().oddities().isEmpty()) {
            blocks.add(new Block.Prose("What else a careful reader should know of the journal:"));
            blocks.add(new Block.Points(content.state().oddities().stream().map(oddity -> oddity.text()).toList()));
        }
        return new Section("sessions", "What happened", blocks);
    }

    private static String levels(Map<String, String> levels) {
        return levels.entrySet().stream().map(entry -> entry.getKey() + " " + entry.getValue()).collect(Collectors.joining(", "));
    }

    private static String minute(OffsetDateTime at) {
        return MINUTE.format(at);
    }

    static Section trials(StudyContent content) {
        List<Block> blocks = new ArrayList<>();
        if (content.state().trials().isEmpty()) {
            blocks.add(new Block.Prose("No trial was recorded yet."));
        } else {
            blocks.add(table(content));
        }
        if (!content.state().skipped().isEmpty()) {
            blocks.add(new Block.Grid("Trials left out", List.of(Block.Column.numbers("trial"), Block.Column.words("reason")),
                    content.state().skipped().entrySet().stream().map(entry -> List.of(Integer.toString(entry.getKey()), entry.getValue())).toList()));
        }
        return new Section("trials", "Every trial", blocks);
    }

    private static Block.Grid table(StudyContent content) {
        List<Factor> factors = content.plan().factors().stream().filter(factor -> factor.levels().size() > 1).toList();
        String unit = content.plan().metric().unit();
        List<Block.Column> columns = new ArrayList<>(List.of(Block.Column.numbers("trial"), Block.Column.numbers("session"), Block.Column.numbers("order")));
        factors.forEach(factor -> columns.add(Block.Column.words(factor.name())));
        columns.add(Block.Column.numbers(content.plan().metric().name() + (unit.isEmpty() ? "" : ", " + unit)));
        columns.add(Block.Column.words("started"));
        columns.add(Block.Column.numbers("took, s"));
        columns.add(Block.Column.words("from"));
        List<List<String>> rows = new ArrayList<>();
        for (Trial trial : content.state().trials()) {
            List<String> row = new ArrayList<>(List.of(Integer.toString(trial.position()), Integer.toString(trial.recorded().session()),
                    Integer.toString(trial.recorded().orderInSession())));
            factors.forEach(factor -> row.add(trial.recorded().levels().getOrDefault(factor.name(), "")));
            row.add(Figures.score(trial.score()) + (trial.corrections().isEmpty() ? "" : " (was " + Figures.score(trial.recorded().score()) + ")"));
            row.add(minute(trial.recorded().startedAt()));
            row.add(Figures.fixed(trial.recorded().elapsedSeconds(), 1));
            row.add(source(trial.recorded().source()));
            rows.add(row);
        }
        return new Block.Grid("Every trial that counts, in the order run", columns, rows);
    }

    private static String source(Source source) {
        return switch (source) {
            case MANUAL -> "typed in";
            case RECORDED -> "recorded";
            case IMPORTED -> "imported";
            case SIMULATED -> "simulated";
        };
    }
}
