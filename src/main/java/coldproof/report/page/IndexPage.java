package coldproof.report.page;

import coldproof.quantity.Counted;
import coldproof.quantity.Interval;
import coldproof.quantity.LogRatio;
import coldproof.reason.verdict.Compared;
import coldproof.reason.verdict.Comparisons;
import coldproof.report.plot.Axis;
import coldproof.report.plot.Ink;
import coldproof.report.plot.Mark;
import coldproof.report.plot.Plot;
import coldproof.report.text.Figures;
import coldproof.report.text.VerdictText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/** All studies of a folder on one page: what each found, side by side. */
public final class IndexPage {
    private static final int ABOVE_AND_BELOW = 70;
    private static final int EACH = 26;
    private final List<StudyLine> studies;

    private IndexPage(List<StudyLine> studies) {
        this.studies = studies;
    }

    /** The page of these studies, in their order. */
    public static Page of(List<StudyLine> studies) {
        return new IndexPage(studies).page();
    }

    private Page page() {
        List<Section> sections = new ArrayList<>();
        List<Block> entries = new ArrayList<>();
        for (int i = 0; i < studies.size(); i++) {
            entries.add(entry(i + 1, studies.get(i)));
        }
        sections.add(new Section("studies", "What was found", entries));
        plot().ifPresent(plot -> sections.add(new Section("together", "Side by side", List.of(new Block.Drawing(plot), new Block.Prose(
                "Studies differ in device, workload, day and in what matters to them: this picture compares what was found, it does not pool it.")))));
        return new Page("Studies", Counted.of(studies.size(), "study", "studies") + " in this folder", sections);
    }

    private static Block entry(int number, StudyLine study) {
        String where = study.folder().isEmpty() ? "this folder" : study.folder();
        if (study.known().isEmpty()) {
            return new Block.Entry("NOT READ", number + ". " + where, "", study.problem(), "");
        }
        StudyLine.Known known = study.known().get();
        String trials = known.trials() + " of " + known.planned() + " trials";
        String small = known.plan().device() + ", " + trials + ", in " + where + known.simulated().map(text -> ". SIMULATED DATA: " + text).orElse("");
        String title = number + ". " + known.plan().title();
        if (known.trials() == 0) {
            return new Block.Entry("NOT BEGUN", title, study.page(), "No trial was recorded yet.", small);
        }
        StringBuilder sentences = new StringBuilder();
        known.answers().forEach(one -> sentences.append(sentences.isEmpty() ? "" : " ").append(VerdictText.sentence(one.question(), one.verdict())));
        return new Block.Entry(Comparisons.deciding(known.answers()).verdict().decision().words(), title, study.page(), sentences.toString(), small);
    }

    private Optional<Plot> plot() {
        List<Mark> marks = new ArrayList<>(List.of(new Mark.Rule(Mark.Along.X, 0, Ink.GREY, Mark.Stroke.PLAIN)));
        List<Axis.Mark> rows = new ArrayList<>();
        List<Double> ends = new ArrayList<>(List.of(0.0));
        StringBuilder words = new StringBuilder();
        List<Row> all = rowsOf();
        for (int i = 0; i < all.size(); i++) {
            Row row = all.get(i);
            double at = all.size() - i;
            rows.add(new Axis.Mark(at, row.label()));
            marks.add(new Mark.Reach(at, row.interval().low(), row.effect(), row.interval().high(), Mark.Along.X, Ink.DEEP_BLUE, Mark.Weight.FINE));
            DoubleStream.of(row.effect(), row.interval().low(), row.interval().high()).filter(Double::isFinite).forEach(ends::add);
            words.append(row.label()).append(": ").append(Figures.change(row.effect())).append(" (").append(Figures.change(row.interval().low())).append(" to ")
                    .append(Figures.change(row.interval().high())).append("). ");
        }
        if (all.isEmpty()) {
            return Optional.empty();
        }
        double low = ends.stream().mapToDouble(x -> x).min().orElseThrow();
        double high = ends.stream().mapToDouble(x -> x).max().orElseThrow();
        double room = 0.05 * Math.max(high - low, 0.1);
        List<Plot.Key> keys = List.of(Plot.Key.of(Plot.Sign.REACH, Ink.DEEP_BLUE, "estimate with its interval; the number is that of the study above"));
        return Optional.of(new Plot("Changes found", words.toString().strip(), Axis.percent("change, more is better", low - room, high + room),
                new Axis("study", 0.4, all.size() + 0.6, rows), marks, keys, ABOVE_AND_BELOW + EACH * all.size()));
    }

    private record Row(String label, double effect, Interval interval) {}

    private List<Row> rowsOf() {
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < studies.size(); i++) {
            List<Compared> known = studies.get(i).known().map(StudyLine.Known::answers).orElse(List.of()).stream()
                    .filter(one -> one.verdict().estimate().isPresent() && one.verdict().interval().isPresent()).toList();
            for (int k = 0; k < known.size(); k++) {
                String label = Integer.toString(i + 1) + (known.size() > 1 ? Character.toString('a' + k % 26) : "");
                rows.add(new Row(label, LogRatio.toPercent(known.get(k).verdict().estimate().orElseThrow().log()), known.get(k).verdict().interval().orElseThrow().logToPercent()));
            }
        }
        return rows;
    }
}
