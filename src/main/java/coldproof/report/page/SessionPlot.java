package coldproof.report.page;

import coldproof.plan.Better;
import coldproof.plan.Layout;
import coldproof.report.plot.Axis;
import coldproof.report.plot.Ink;
import coldproof.report.plot.Mark;
import coldproof.report.plot.Plot;
import coldproof.report.text.Figures;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/** Every trial as a point, by session, with the interval of each mean. */
final class SessionPlot {
    private static final double SPREAD = 0.34; // how far points stand from the middle of their place
    private final StudyContent content;
    private final Levels levels;
    private final Scores scores;
    private final boolean sessions;

    private SessionPlot(StudyContent content) {
        this.content = content;
        this.levels = new Levels(content.plan());
        this.scores = Scores.of(content);
        this.sessions = content.plan().layout().kind() == Layout.Kind.SESSIONS;
    }

    static Plot of(StudyContent content) {
        return new SessionPlot(content).plot();
    }

    private Plot plot() {
        List<Mark> marks = new ArrayList<>();
        List<Integer> numbers = scores.groups().stream().map(Scores.Group::session).distinct().sorted().toList();
        for (String level : levels.names()) {
            List<Mark.Place> points = new ArrayList<>();
            for (Scores.Group group : scores.groups()) {
                if (group.level().equals(level)) {
                    double middle = place(group, numbers);
                    points.addAll(points(group, middle, width()));
                    if (Double.isFinite(group.low())) {
                        marks.add(new Mark.Reach(middle + width() + 0.07, group.low(), group.mean(), group.high(), Mark.Along.Y, Ink.GREY, Mark.Weight.FINE));
                    }
                }
            }
            if (!points.isEmpty()) {
                marks.add(new Mark.Points(points, levels.ink(level), levels.shape(level)));
            }
        }
        String unit = content.plan().metric().unit();
        String better = content.plan().metric().better() == Better.LOWER ? " (less is better)" : "";
        Axis y = Axis.around(content.plan().metric().name() + (unit.isEmpty() ? "" : ", " + unit) + better, scores.groups().stream().flatMapToDouble(
                group -> DoubleStream.concat(DoubleStream.of(group.low(), group.high()), group.runs().stream().mapToDouble(Scores.Run::score))));
        Axis x = sessions ? Axis.places("session", numbers.stream().map(number -> Integer.toString(number)).toList(), 20)
                : Axis.places(content.plan().compare().factor(), levels.names(), 8);
        List<Plot.Key> keys = new ArrayList<>(levels.keys(scores.runs()));
        if (marks.stream().anyMatch(mark -> mark instanceof Mark.Reach)) {
            keys.add(Plot.Key.of(Plot.Sign.REACH, Ink.GREY, "mean with its " + Figures.given(100 - 100 * content.plan().errors().falseAlarm())
                    + " interval from run-to-run noise alone"));
        }
        return new Plot(sessions ? "Every trial, by session" : "Every trial, by level", description(), x, y, marks, keys, Plot.USUAL_HEIGHT);
    }

    private double width() {
        return sessions && content.plan().comparesSessions() || !sessions ? SPREAD * 0.7 : SPREAD / 2;
    }

    /** Where the middle of a group's points stands; levels of one session stand beside each other. */
    private double place(Scores.Group group, List<Integer> numbers) {
        if (!sessions) {
            return levels.names().indexOf(group.level()) + 1;
        }
        double at = numbers.indexOf(group.session()) + 1;
        if (content.plan().comparesSessions()) {
            return at;
        }
        int count = levels.names().size();
        return at + (levels.names().indexOf(group.level()) - (count - 1) / 2.0) * 0.9 / count;
    }

    private static List<Mark.Place> points(Scores.Group group, double middle, double half) {
        List<Mark.Place> places = new ArrayList<>();
        int size = group.runs().size();
        for (int i = 0; i < size; i++) {
            double along = size == 1 ? 0 : 2.0 * i / (size - 1) - 1;
            places.add(new Mark.Place(middle + along * half * 0.85, group.runs().get(i).score()));
        }
        return places;
    }

    private String description() {
        StringBuilder text = new StringBuilder("Each trial is a point, from left to right in the order they were run. Geometric means: ");
        String between = "";
        for (Scores.Group group : scores.groups().size() > 24 ? scores.groups().subList(0, 24) : scores.groups()) {
            text.append(between).append(sessions ? "session " + group.session() + " (" + group.level() + ") " : group.level() + " ").append(Figures.score(group.mean()));
            between = ", ";
        }
        return text.append(scores.groups().size() > 24 ? " and so on; all are in the table of trials." : ".").toString();
    }
}
