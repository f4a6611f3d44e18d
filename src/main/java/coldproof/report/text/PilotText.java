package coldproof.report.text;

import coldproof.plan.NoiseAssumption;
import coldproof.reason.sizing.PilotAdvice;
import coldproof.reason.sizing.PilotAdvice.Pilot;

/** What a pilot is worth, for people. */
public final class PilotText {
    private PilotText() {}

    /** What is known now, the pilots, and the one to run. */
    public static String of(PilotAdvice advice, int columns) {
        StringBuilder out = new StringBuilder();
        NoiseAssumption noise = advice.plan().noise().orElseThrow();
        out.append(Wrap.at(columns, Harmless.line("Planned with noise run to run " + Figures.given(noise.runCvPercent()) + ", session to session "
                + Figures.given(noise.sessionCvPercent()) + ", from: " + noise.from() + ".")));
        out.append("  power if that is exactly so            ").append(Double.isNaN(advice.power()) ? "-" : Figures.share(advice.power())).append('\n');
        out.append("  averaged over what is not known of it  ");
        if (advice.assurance().isPresent()) {
            out.append(Figures.share(advice.assurance().getAsDouble())).append(" (").append(Figures.fixed(advice.degreesOfFreedom().orElseThrow(), 1))
                    .append(" degrees of freedom)\n");
        } else {
            out.append("not known: the noise is a guess\n");
        }
        pilots(advice, columns, out);
        best(advice, columns, out);
        return out.toString();
    }

    private static void pilots(PilotAdvice advice, int columns, StringBuilder out) {
        String wanted = Figures.given(100 * advice.plan().errors().power());
        out.append('\n').append(Wrap.at(columns, "Pilots of the baseline alone, if they confirm that noise; the study is then sized so that its power, averaged over "
                + "what the pilot leaves open, is " + wanted + ":"));
        TextTable table = new TextTable(">sessions", ">trials", ">takes", ">true noise x", ">assurance", ">study", ">in all");
        for (Pilot pilot : advice.pilots().stream().filter(pilot -> advice.pilots().stream().noneMatch(other -> beats(other, pilot))).toList()) {
            String needed = pilot.needed().map(units -> units.get(0) + " + " + units.get(1)).orElse("too many");
            table.row(Integer.toString(pilot.sessions()), Integer.toString(pilot.trials()), Figures.minutes(pilot.minutes()),
                    Figures.fixed(pilot.noise().low(), 2) + " to " + Figures.fixed(pilot.noise().high(), 2), Figures.share(pilot.assurance()), needed,
                    Figures.minutes(pilot.minutesInAll()));
        }
        out.append(table.text("  "));
        out.append(Wrap.at(columns, "True noise: where it lies 80 times in 100, as a multiple of what the pilot found. Assurance: of the plan as laid out. "
                + "Pilots that tell less than a shorter one are left out."));
    }

    /** Whether a pilot tells more and takes no longer; those that are beaten are left out of the table. */
    private static boolean beats(Pilot other, Pilot pilot) {
        double takes = cost(pilot);
        return other.degreesOfFreedom() >= pilot.degreesOfFreedom() && cost(other) <= takes
                && (other.degreesOfFreedom() > pilot.degreesOfFreedom() || cost(other) < takes);
    }

    private static double cost(Pilot pilot) {
        return Double.isNaN(pilot.minutes()) ? pilot.sessions() * pilot.trials() : pilot.minutes();
    }

    private static void best(PilotAdvice advice, int columns, StringBuilder out) {
        if (advice.best().isEmpty()) {
            Wrap.hanging("  look: ", "no pilot of this size lets a study of up to 200 units of a level reach that. Look for a quieter workload or a larger change.",
                    columns, out);
            return;
        }
        Pilot best = advice.best().get();
        String where = best.sessions() == 1 ? "in one sitting" : "in each of " + best.sessions() + " sessions";
        out.append(Wrap.at(columns, "Cheapest together: " + best.trials() + " baseline trials " + where + ", then a study of " + best.needed().orElseThrow().get(0)
                + " + " + best.needed().orElseThrow().get(1) + ". Afterwards: coldproof noise, and its line into the plan."));
    }
}
