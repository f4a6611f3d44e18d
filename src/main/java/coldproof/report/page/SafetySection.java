package coldproof.report.page;

import coldproof.report.text.Figures;
import coldproof.study.CautionAcknowledged;
import coldproof.study.CautionShown;
import coldproof.study.Numbered;
import coldproof.study.Observed;
import coldproof.study.StartConditionsChecked;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** What was shown, confirmed and read for safety, and before trials began. */
final class SafetySection {
    private SafetySection() {}

    static Section of(StudyContent content) {
        List<Block> blocks = new ArrayList<>();
        SortedMap<Long, List<String>> rows = new TreeMap<>(); // by entry
        for (Numbered<CautionShown> shown : content.state().cautionsShown()) {
            rows.put(shown.sequence(), List.of(Long.toString(shown.sequence()), "shown", shown.event().level(), shown.event().rule(), shown.event().phase(),
                    readings(shown.event().conditions())));
        }
        for (Numbered<CautionAcknowledged> read : content.state().cautionsAcknowledged()) {
            String by = content.names() && !read.event().by().isBlank() ? " by " + read.event().by() : "";
            rows.put(read.sequence(), List.of(Long.toString(read.sequence()), "confirmed" + by, read.event().level(), read.event().rule(), read.event().phase(),
                    readings(read.event().conditions())));
        }
        if (rows.isEmpty()) {
            blocks.add(new Block.Prose("No caution was shown or confirmed in this journal."));
        } else {
            blocks.add(new Block.Grid("Cautions shown and confirmed", List.of(Block.Column.numbers("entry"), Block.Column.words("what"), Block.Column.words("level"),
                    Block.Column.words("rule"), Block.Column.words("phase"), Block.Column.words("judged on")), List.copyOf(rows.values())));
        }
        content.state().rulesLoosened().forEach(loosened -> blocks.add(new Block.Notice("RULE SET ASIDE", loosened.event().rule() + ": " + loosened.event().reason())));
        starts(content, blocks);
        blocks.add(new Block.Prose("Cautions are the usual ones and no more than that: the maker's limits, local codes and licensed practice go before them."));
        return new Section("safety", "Safety record", blocks);
    }

    private static void starts(StudyContent content, List<Block> blocks) {
        List<StartConditionsChecked> checks = content.state().startConditions().stream().map(Numbered::event).toList();
        if (checks.isEmpty()) {
            return;
        }
        List<String> names = checks.stream().flatMap(check -> check.readings().keySet().stream()).distinct().toList();
        List<Block.Column> columns = new ArrayList<>(List.of(Block.Column.numbers("session"), Block.Column.numbers("trial")));
        names.forEach(name -> columns.add(Block.Column.words(name)));
        columns.add(Block.Column.words("found"));
        List<List<String>> rows = new ArrayList<>();
        for (StartConditionsChecked check : checks) {
            List<String> row = new ArrayList<>(List.of(Integer.toString(check.session()), check.position().isPresent() ? Integer.toString(check.position().getAsInt()) : ""));
            names.forEach(name -> row.add(check.readings().containsKey(name) ? value(check.readings().get(name)) : ""));
            row.add(check.deviations().isEmpty() ? "as planned" : String.join("; ", check.deviations()));
            rows.add(row);
        }
        if (checks.stream().flatMap(check -> check.readings().values().stream()).anyMatch(reading -> !reading.sensor().isEmpty())) {
            blocks.add(new Block.Prose("In round brackets: the sensor of the computer that showed it; everything else was read by a person."));
        }
        blocks.add(new Block.Grid("Read before trials", columns, rows));
    }

    private static String readings(Map<String, Observed> readings) {
        return readings.entrySet().stream().map(entry -> entry.getKey() + " " + value(entry.getValue())).collect(Collectors.joining(", "));
    }

    private static String value(Observed observed) {
        return observed.sensor().isEmpty() ? figure(observed) : figure(observed) + " (" + observed.sensor() + ")";
    }

    private static String figure(Observed observed) {
        if (observed.amount().isEmpty()) {
            return observed.word();
        }
        String number = Figures.fixed(observed.amount().getAsDouble(), 4).replaceFirst("\\.?0+$", "");
        return observed.unit().isEmpty() ? number : number + " " + observed.unit();
    }
}
