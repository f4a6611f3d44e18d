package coldproof.report.text;

import coldproof.plan.Claim;
import coldproof.plan.Layout;
import coldproof.quantity.Counted;
import coldproof.quantity.LogRatio;
import coldproof.reason.sizing.Size;
import coldproof.reason.sizing.SizingAnswer;
import coldproof.reason.sizing.Warning;
import java.util.stream.Collectors;

/** The size of a study for people. Plain branches, no lambdas: the first use of each costs a two-hundredth of the time to start. */
public final class SizingText {
    private SizingText() {}

    /** What it takes and what it sees. */
    public static String of(SizingAnswer answer, int columns) {
        StringBuilder out = new StringBuilder();
        if (answer.size().isPresent()) {
            size(answer.size().get(), answer, columns, out);
        }
        if (answer.needed().isPresent()) {
            out.append(Wrap.at(columns, "For " + Figures.share(answer.wantedPower()) + " power it would take " + units(answer.needed().get()) + "."));
        }
        String time = PlanText.time(answer.minutes().total(), answer.minutes().outdoors());
        if (!time.isEmpty()) {
            out.append(time).append('\n');
        }
        if (answer.looks().isPresent()) {
            out.append(LooksText.of(answer.looks().get(), columns));
        }
        for (Warning warning : answer.warnings()) {
            Wrap.hanging("  look: ", warning.text(), columns, out);
        }
        return out.toString();
    }

    private static void size(Size size, SizingAnswer answer, int columns, StringBuilder out) {
        String what = size.claim() == Claim.GAIN ? "a change of " + Figures.change(LogRatio.toPercent(size.logEffect()))
                : "that nothing changes by " + Figures.given(answer.mattersPercent()) + " or more";
        out.append(Wrap.at(columns, "To show " + what + ": " + units(size) + ", " + size.trialsTotal() + " trials in all."));
        out.append("  power             ").append(Figures.share(size.power())).append(" with ")
                .append(Counted.degreesOfFreedom(Figures.fixed(size.degreesOfFreedom(), 0)));
        if (size.powerOneFewer().isPresent()) {
            out.append("; one fewer of each: ").append(Figures.share(size.powerOneFewer().getAsDouble()));
        }
        out.append('\n');
        if (size.smallestDetectableLog().isPresent()) {
            out.append("  smallest change   ").append(Figures.change(LogRatio.toPercent(size.smallestDetectableLog().getAsDouble()))).append(" is seen with ")
                    .append(Figures.share(answer.wantedPower())).append(" power\n");
        }
        if (size.smallestMarginLog().isPresent()) {
            out.append("  smallest margin   ").append(Figures.percent(LogRatio.toPercent(size.smallestMarginLog().getAsDouble()))).append(" is shown with ")
                    .append(Figures.share(answer.wantedPower())).append(" power\n");
        }
        out.append("  randomisation     smallest possible p ").append(Figures.probability(size.smallestRandomisationP())).append('\n');
    }

    private static String units(Size size) {
        String noun = size.layout() == Layout.Kind.PAIRED ? "pairs" : size.layout() == Layout.Kind.SESSIONS ? "sessions" : "trials";
        return size.perLevel().stream().map(String::valueOf).collect(Collectors.joining(" + ")) + " " + noun;
    }
}
