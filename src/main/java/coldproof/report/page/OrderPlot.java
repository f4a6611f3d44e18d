package coldproof.report.page;

import coldproof.report.plot.Axis;
import coldproof.report.plot.Ink;
import coldproof.report.plot.Mark;
import coldproof.report.plot.Plot;
import coldproof.report.text.Figures;
import coldproof.stats.series.Trend;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/** What is left of each score when its condition is taken out, in the order the trials were run, with a straight line through it. */
final class OrderPlot {
    private static final int FEWEST = 4;

    private OrderPlot() {}

    static Plot of(StudyContent content) {
        Levels levels = new Levels(content.plan());
        Scores scores = Scores.of(content);
        double[] left = scores.percentFromCondition();
        List<Mark> marks = new ArrayList<>();
        marks.add(new Mark.Rule(Mark.Along.Y, 0, Ink.GREY, Mark.Stroke.PLAIN));
        sessions(scores, marks);
        for (String level : levels.names()) {
            List<Mark.Place> places = scores.runs().stream().filter(run -> run.level().equals(level)).map(run -> new Mark.Place(run.order(), left[run.order() - 1]))
                    .toList();
            marks.add(new Mark.Points(places, levels.ink(level), levels.shape(level)));
        }
        List<Plot.Key> keys = new ArrayList<>(levels.keys(scores.runs()));
        String drift = "There are too few trials for a trend.";
        if (left.length >= FEWEST) {
            Trend trend = Trend.of(left);
            int last = left.length;
            String change = Figures.change(trend.slope() * (last - 1)) + " from the first trial to the last";
            marks.add(new Mark.Line(List.of(new Mark.Place(1, trend.intercept() + trend.slope()), new Mark.Place(last, trend.intercept() + last * trend.slope())),
                    Ink.GREY, Mark.Stroke.DASHED));
            keys.add(Plot.Key.of(Plot.Sign.DASHED, Ink.GREY, "trend: " + change));
            drift = "A straight line through all of them runs " + change + ".";
        }
        if (scores.runs().stream().map(Scores.Run::session).distinct().count() > 1) {
            keys.add(Plot.Key.of(Plot.Sign.DOTTED, Ink.GREY, "a new session"));
        }
        Axis x = Axis.between("trial, in the order run", 0, left.length + 1.0);
        Axis raw = Axis.around("", DoubleStream.of(left));
        double span = Math.max(0.5, Math.max(raw.high(), -raw.low()));
        return new Plot("Run order and drift", "Each point is how far a trial lies above or below the mean of its condition. " + drift, x,
                Axis.percent("from the mean of its condition", -span, span), marks, keys, Plot.USUAL_HEIGHT);
    }

    private static void sessions(Scores scores, List<Mark> marks) {
        int before = scores.runs().isEmpty() ? 0 : scores.runs().get(0).session();
        for (Scores.Run run : scores.runs()) {
            if (run.session() != before) {
                marks.add(new Mark.Rule(Mark.Along.X, run.order() - 0.5, Ink.GREY, Mark.Stroke.DOTTED));
            }
            before = run.session();
        }
    }
}
