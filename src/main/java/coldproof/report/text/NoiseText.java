package coldproof.report.text;

import coldproof.quantity.Interval;
import coldproof.reason.noise.NoiseReading;
import java.util.Locale;

/** The noise for people, with the lines to put into a plan. */
public final class NoiseText {
    private NoiseText() {}

    /** The noise with its intervals. */
    public static String of(NoiseReading noise) {
        StringBuilder out = new StringBuilder();
        out.append("Run to run          ").append(Figures.percent(noise.runCvPercent())).append(range(noise.runInterval())).append(", ").append(noise.runDf())
                .append(" degrees of freedom\n");
        if (noise.sessionCvPercent().isPresent()) {
            out.append("Session to session  ").append(Figures.percent(noise.sessionCvPercent().getAsDouble()))
                    .append(range(noise.sessionInterval().orElseThrow())).append(", ").append(noise.sessionDf()).append(" degrees of freedom\n");
        } else {
            out.append("Session to session  not known: every condition had one session\n");
        }
        if (noise.sessionNegative()) {
            out.append("The sessions differ less than their trials would let expect; shown as 0 %.\n");
        }
        out.append("From ").append(noise.trials()).append(" trials of ").append(noise.studies()).append(noise.studies() == 1 ? " study" : " studies").append(".\n\n");
        out.append("In a plan:\n  noise: {run to run: ").append(number(noise.runCvPercent())).append(" %, session to session: ")
                .append(number(noise.sessionCvPercent().orElse(0))).append(" %, run degrees of freedom: ").append(noise.runDf());
        if (noise.sessionDf() > 0) {
            out.append(", session degrees of freedom: ").append(noise.sessionDf()).append(", trials per session: ")
                    .append(Math.max(1, Math.round(noise.components().trialsPerSession())));
        }
        return out.append(", from: pilot}\n").toString();
    }

    private static String range(Interval interval) {
        return " (90 % interval " + Figures.percent(interval.low()) + " to " + Figures.percent(interval.high()) + ")";
    }

    private static String number(double percent) {
        return String.format(Locale.ROOT, "%.2f", percent);
    }
}
