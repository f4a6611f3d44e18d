package coldproof.report.text;

import coldproof.quantity.Counted;
import coldproof.quantity.Interval;
import coldproof.reason.noise.NoiseReading;
import java.util.Locale;

/** The noise for people, with the lines to put into a plan. */
public final class NoiseText {
    private NoiseText() {}

    /** The noise with its intervals, for a screen of so many columns; the line for a plan stays whole, to be copied. */
    public static String of(NoiseReading noise, int columns) {
        StringBuilder out = new StringBuilder();
        Wrap.hanging("Run to run          ", part(noise.runCvPercent(), noise.runInterval(), noise.runDf()), columns, out);
        Wrap.hanging("Session to session  ", noise.sessionCvPercent().isEmpty() ? "not known: every condition had one session"
                : part(noise.sessionCvPercent().getAsDouble(), noise.sessionInterval().orElseThrow(), noise.sessionDf()), columns, out);
        if (noise.sessionNegative()) {
            out.append(Wrap.at(columns, "The sessions differ less than their trials would let expect; shown as 0 %."));
        }
        out.append("From ").append(Counted.of(noise.trials(), "trial")).append(" of ").append(Counted.of(noise.studies(), "study", "studies")).append(".\n\n");
        out.append("In a plan:\n  noise: {run to run: ").append(number(noise.runCvPercent())).append(" %, session to session: ")
                .append(number(noise.sessionCvPercent().orElse(0))).append(" %, run degrees of freedom: ").append(noise.runDf());
        if (noise.sessionDf() > 0) {
            out.append(", session degrees of freedom: ").append(noise.sessionDf()).append(", trials per session: ")
                    .append(Math.max(1, Math.round(noise.components().trialsPerSession())));
        }
        return out.append(", from: pilot}\n").toString();
    }

    private static String part(double cvPercent, Interval percent, int degreesOfFreedom) {
        return Figures.percent(cvPercent) + " (90 % interval " + Figures.percent(percent.low()) + " to " + Figures.percent(percent.high()) + "), "
                + Counted.degreesOfFreedom(Integer.toString(degreesOfFreedom));
    }

    private static String number(double percent) {
        return String.format(Locale.ROOT, "%.2f", percent);
    }
}
