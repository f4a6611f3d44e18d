package coldproof.reason.limiter;

import coldproof.trace.Channel;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Whether trials began as the plan asks, as far as their traces tell. */
public final class StartMatch {
    private static final int MOST_NAMED = 3;

    private StartMatch() {}

    /**
     * The die before a trial.
     *
     * @param session its session
     * @param order place in the run order
     * @param celsius mean of the die over the rows before the work; NaN when the log does not show it
     */
    record Start(String session, double order, double celsius) {}

    /**
     * One sentence on the die's temperature before the work, against the first trial of each session that shows it.
     *
     * @param trials in the order run
     * @param withinKelvins how far apart the plan allows, K
     */
    public static String remark(List<LimiterTrial> trials, double withinKelvins) {
        return of(trials.stream().map(trial -> new Start(trial.session(), trial.order(), trial.trace().before().getOrDefault(Channel.DIE_TEMPERATURE, Double.NaN)))
                .toList(), withinKelvins);
    }

    static String of(List<Start> starts, double withinKelvins) {
        Map<String, Double> first = new HashMap<>();
        List<String> off = new ArrayList<>();
        int compared = 0;
        double most = 0;
        for (Start start : starts) {
            if (Double.isNaN(start.celsius())) {
                continue;
            }
            if (first.putIfAbsent(start.session(), start.celsius()) != null) {
                double away = start.celsius() - first.get(start.session());
                compared++;
                most = Math.max(most, Math.abs(away));
                if (Math.abs(away) > withinKelvins) {
                    off.add(String.format(Locale.ROOT, "trial %.0f (%+.1f K)", start.order(), away));
                }
            }
        }
        String asked = String.format(Locale.ROOT, "within %.1f K of its session's first trial", withinKelvins);
        if (compared == 0) {
            return "start conditions: the traces do not show whether the die began " + asked;
        }
        String found = off.isEmpty() ? String.format(Locale.ROOT, "all of %d trials, at most %.1f K off", compared, most)
                : String.format(Locale.ROOT, "%d of %d trials, not in %s", compared - off.size(), compared,
                String.join(", ", off.subList(0, Math.min(MOST_NAMED, off.size()))) + (off.size() > MOST_NAMED ? " and " + (off.size() - MOST_NAMED) + " more" : ""));
        return "start conditions, from the rows before the work: the die began " + asked + " in " + found;
    }
}
