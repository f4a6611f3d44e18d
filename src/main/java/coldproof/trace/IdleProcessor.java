package coldproof.trace;

import coldproof.trace.TraceUnit.Kind;
import java.util.List;
import java.util.Optional;

/** Where a log has columns of two processors, those of the one that stands idle: its clock and heat say nothing of the work. */
final class IdleProcessor {
    private static final double CLEARLY = 2; // times as busy

    private IdleProcessor() {}

    static List<ColumnSample> columns(List<ColumnSample> columns, SampleShape shape) {
        List<ColumnSample> main = columns.stream().filter(column -> isOf(column, true)).toList();
        List<ColumnSample> graphics = columns.stream().filter(column -> isOf(column, false)).toList();
        for (Kind kind : new Kind[] {Kind.SHARE, Kind.POWER}) {
            double mainBusy = busy(main, kind, shape);
            double graphicsBusy = busy(graphics, kind, shape);
            if (mainBusy > CLEARLY * graphicsBusy) {
                return graphics;
            }
            if (graphicsBusy > CLEARLY * mainBusy) {
                return main;
            }
        }
        return List.of();
    }

    private static boolean isOf(ColumnSample column, boolean main) {
        HeadingWords words = new HeadingWords(column.name());
        boolean both = words.hasAny(Vocabulary.MAIN_PROCESSOR) && words.hasAny(Vocabulary.GRAPHICS);
        return !both && words.hasAny(main ? Vocabulary.MAIN_PROCESSOR : Vocabulary.GRAPHICS);
    }

    /** Highest mean in the work of its columns of a kind; NaN when there is none, so that nothing compares. */
    private static double busy(List<ColumnSample> columns, Kind kind, SampleShape shape) {
        return columns.stream().filter(column -> isReading(column, kind))
                .mapToDouble(column -> UnitGuess.of(column, kind).toInside(shape.work(column))).max().orElse(Double.NaN);
    }

    private static boolean isReading(ColumnSample column, Kind kind) {
        HeadingWords words = new HeadingWords(column.name());
        Optional<Kind> measured = UnitGuess.kindOf(column, words);
        return measured.isPresent() && measured.get() == kind && !words.hasAny(Vocabulary.NOT_MEASURED) && !words.hasAny(Vocabulary.BESIDE) && !words.hasAny(Vocabulary.FAN);
    }
}
