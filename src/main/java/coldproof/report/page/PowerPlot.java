package coldproof.report.page;

import coldproof.plan.Claim;
import coldproof.plan.NoiseAssumption;
import coldproof.plan.Plan;
import coldproof.reason.sizing.PlanPrecision;
import coldproof.reason.verdict.Compared;
import coldproof.reason.verdict.Verdict;
import coldproof.report.plot.Axis;
import coldproof.report.plot.Ink;
import coldproof.report.plot.Mark;
import coldproof.report.plot.Plot;
import coldproof.report.text.Figures;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.OptionalDouble;

/** How often the plan as laid out finds a true change of each size. */
final class PowerPlot {
    private static final int STEPS = 60;

    private PowerPlot() {}

    /** The plot; empty when nothing is known about noise. */
    static Optional<Plot> of(StudyContent content) {
        return noise(content).flatMap(noise -> PlanPrecision.of(content.plan(), content.sheet(), noise).map(precision -> plot(content, noise, precision)));
    }

    /** The noise planned with, else that seen in the trials. */
    private static Optional<NoiseAssumption> noise(StudyContent content) {
        return content.plan().noise().or(() -> content.answers().stream().findFirst().map(Compared::verdict)
                .filter(verdict -> verdict.runCvPercent().isPresent()).map(PowerPlot::seen));
    }

    private static NoiseAssumption seen(Verdict verdict) {
        return new NoiseAssumption(verdict.runCvPercent().getAsDouble(), verdict.sessionCvPercent().orElse(0), OptionalDouble.empty(), OptionalDouble.empty(),
                "these trials");
    }

    private static Plot plot(StudyContent content, NoiseAssumption noise, PlanPrecision precision) {
        Plan plan = content.plan();
        boolean gain = plan.claim() == Claim.GAIN;
        double margin = Math.log1p(plan.mattersPercent() / 100);
        double furthest = gain ? Math.max(1.6 * margin, 5 * precision.standardErrorLog()) : 1.3 * margin;
        DoubleUnaryOperator power = precision.power(plan);
        List<Mark.Place> places = new ArrayList<>();
        for (int i = 0; i <= STEPS; i++) {
            double effect = gain ? furthest * i / STEPS : furthest * (2.0 * i / STEPS - 1);
            places.add(new Mark.Place(100 * Math.expm1(effect), 100 * power.applyAsDouble(effect)));
        }
        double wanted = 100 * plan.errors().power();
        double reached = 100 * power.applyAsDouble(gain ? margin : 0);
        List<Mark> marks = new ArrayList<>(List.of(new Mark.Rule(Mark.Along.Y, wanted, Ink.GREY, Mark.Stroke.DASHED),
                new Mark.Rule(Mark.Along.X, plan.mattersPercent(), Ink.GREY, Mark.Stroke.DOTTED)));
        if (!gain) {
            marks.add(new Mark.Rule(Mark.Along.X, 100 * Math.expm1(-margin), Ink.GREY, Mark.Stroke.DOTTED));
        }
        marks.add(new Mark.Line(places, Ink.DEEP_BLUE, Mark.Stroke.PLAIN));
        double at = gain ? plan.mattersPercent() : 0;
        marks.add(new Mark.Points(List.of(new Mark.Place(at, reached)), Ink.DEEP_BLUE, coldproof.report.plot.Shape.DISC));
        String what = gain ? "a change of " + Figures.given(plan.mattersPercent()) + " is found" : "sameness is shown when nothing changed";
        List<Plot.Key> keys = List.of(Plot.Key.of(Plot.Sign.LINE, Ink.DEEP_BLUE, "chance to decide for the claim, with the noise of: " + noise.from()),
                Plot.Key.of(Plot.Sign.DASHED, Ink.GREY, "wanted: " + Figures.given(wanted)), Plot.Key.of(Plot.Sign.DOTTED, Ink.GREY, "what matters: "
                        + Figures.given(plan.mattersPercent())));
        return new Plot("What the plan can see", "With run-to-run noise of " + Figures.given(noise.runCvPercent()) + " and session-to-session noise of "
                + Figures.given(noise.sessionCvPercent()) + ", " + what + " " + Figures.fixed(reached, 0) + " times in 100."
                + (plan.looks() > 1 ? " The curve is that of one look at the end; looks before it cost a little of this." : ""),
                Axis.percent("true change", places.get(0).x(), places.get(STEPS).x()), Axis.percent("chance to show it", 0, 100), marks, keys, Plot.USUAL_HEIGHT);
    }
}
