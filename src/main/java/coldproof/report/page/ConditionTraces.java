package coldproof.report.page;

import coldproof.reason.limiter.LimiterTrial;
import coldproof.report.text.LimiterText;
import coldproof.stats.interval.Median;
import coldproof.trace.Channel;
import coldproof.trace.Phase;
import coldproof.trace.TraceSummary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.DoubleStream;

/**
 * The traces of one condition as curves over a common grid of times.
 *
 * @param name the condition in words
 * @param traces what each trace says
 * @param pinned channels that sit at one value
 */
record ConditionTraces(String name, List<TraceSummary> traces, Set<Channel> pinned) {
    private static final int STEPS = 120;

    /** Curves of a channel: smallest, median and largest of the trials, over times from the start of the work. */
    record Curve(List<Double> seconds, List<Double> low, List<Double> middle, List<Double> high) {}

    static List<ConditionTraces> of(StudyContent.Traces traces) {
        Map<Map<String, String>, List<TraceSummary>> groups = new LinkedHashMap<>();
        for (LimiterTrial trial : traces.trials()) {
            groups.computeIfAbsent(trial.levels(), levels -> new ArrayList<>()).add(trial.trace());
        }
        List<ConditionTraces> conditions = new ArrayList<>();
        groups.forEach((levels, members) -> conditions.add(new ConditionTraces(varying(levels, groups.keySet()), members, traces.pinned().getOrDefault(levels, Set.of()))));
        return conditions;
    }

    /** The levels that tell the conditions apart; all of them where there is one condition. */
    private static String varying(Map<String, String> levels, Set<Map<String, String>> all) {
        Map<String, String> kept = new LinkedHashMap<>();
        levels.forEach((factor, level) -> {
            if (all.size() == 1 || all.stream().anyMatch(other -> !level.equals(other.get(factor)))) {
                kept.put(factor, level);
            }
        });
        return LimiterText.name(kept);
    }

    double longest() {
        return traces.stream().mapToDouble(trace -> trace.work().lengthSeconds()).max().orElse(0);
    }

    boolean has(Channel channel) {
        return traces.stream().anyMatch(trace -> trace.level(channel).isPresent());
    }

    /** Median of what the trials sustained; NaN where it was not measured. */
    double sustained(Channel channel) {
        return Median.of(traces.stream().mapToDouble(trace -> trace.mean(channel).orElse(Double.NaN)).toArray());
    }

    Curve curve(Channel channel, double longest) {
        List<Double> seconds = new ArrayList<>();
        List<Double> low = new ArrayList<>();
        List<Double> middle = new ArrayList<>();
        List<Double> high = new ArrayList<>();
        double step = Math.max(longest / STEPS, traces.stream().mapToDouble(trace -> trace.blocks().stepSeconds()).max().orElse(1));
        for (double from = 0; from + step / 2 < longest; from += step) {
            double start = from;
            double[] values = traces.stream().mapToDouble(trace -> trace.blocks().mean(channel, start, start + step)).filter(Double::isFinite).toArray();
            if (values.length > 0) {
                seconds.add(from + step / 2);
                low.add(DoubleStream.of(values).min().orElseThrow());
                middle.add(Median.of(values));
                high.add(DoubleStream.of(values).max().orElseThrow());
            }
        }
        return new Curve(seconds, low, middle, high);
    }

    /** When phases of a kind begin and end, medians over the trials that have them; empty where fewer than half have them. */
    List<Double> stretch(Phase.Kind kind) {
        List<Phase> found = traces.stream().flatMap(trace -> trace.phases().stream()).filter(phase -> phase.kind() == kind).toList();
        if (2 * found.size() < traces.size() || found.isEmpty()) {
            return List.of();
        }
        return List.of(Median.of(found.stream().mapToDouble(Phase::fromSeconds).toArray()), Median.of(found.stream().mapToDouble(Phase::toSeconds).toArray()));
    }
}
