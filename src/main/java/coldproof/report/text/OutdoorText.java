package coldproof.report.text;

import coldproof.reason.safety.OutdoorBudget;
import coldproof.reason.safety.OutdoorStay;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Planned sessions in the open air beside what allows them. */
public final class OutdoorText {
    private OutdoorText() {}

    /** A sentence for each kind of session; empty where there is none. */
    public static String of(List<OutdoorStay> stays, int columns) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        stays.forEach(stay -> counts.merge(sentence(stay), 1, Integer::sum));
        StringBuilder out = new StringBuilder();
        counts.forEach((sentence, count) -> Wrap.indented((count == 1 ? "One session" : count + " sessions, each") + sentence, "", columns, out));
        return out.toString();
    }

    private static String sentence(OutdoorStay stay) {
        String out = " outdoors (" + Harmless.line(stay.condition()) + ") for " + Figures.minutes(stay.seconds() / 60);
        Optional<OutdoorBudget.Limit> limit = stay.budget().binding();
        if (limit.isEmpty()) {
            return out + "; nothing known limits it (give --wind, --place, --battery-energy and --draw, or write them into safety.yaml).";
        }
        String allowed = Figures.minutes(limit.get().seconds() / 60) + " by " + limit.get().kind().word() + " (" + limit.get().because() + ").";
        return stay.fits() ? out + "; allowed are " + allowed : ": TOO LONG" + out + "; allowed are only " + allowed;
    }
}
