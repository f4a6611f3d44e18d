package coldproof.reason.limiter;

import coldproof.stats.interval.Median;
import coldproof.trace.Channel;
import coldproof.trace.Level;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;

/** The trials of one combination of levels. Levels are taken from soaked trials where there are any: the first trial of a session starts cold. */
final class Condition {
    private final Map<String, String> levels;
    private final List<LimiterTrial> all;
    private final List<LimiterTrial> soaked;

    private Condition(Map<String, String> levels, List<LimiterTrial> all, Set<LimiterTrial> firsts) {
        this.levels = levels;
        this.all = List.copyOf(all);
        List<LimiterTrial> rest = all.stream().filter(trial -> !firsts.contains(trial)).toList();
        this.soaked = rest.isEmpty() ? this.all : rest;
    }

    /** Groups trials by their levels, in the order of their first appearance. */
    static List<Condition> of(List<LimiterTrial> trials) {
        Map<Map<String, String>, List<LimiterTrial>> groups = new LinkedHashMap<>();
        for (LimiterTrial trial : trials) {
            groups.computeIfAbsent(trial.levels(), levels -> new ArrayList<>()).add(trial);
        }
        Set<LimiterTrial> firsts = firstsOfSessions(trials);
        List<Condition> conditions = new ArrayList<>();
        groups.forEach((levels, members) -> conditions.add(new Condition(levels, members, firsts)));
        return conditions;
    }

    private static Set<LimiterTrial> firstsOfSessions(List<LimiterTrial> trials) {
        Map<String, List<LimiterTrial>> sessions = new LinkedHashMap<>();
        for (LimiterTrial trial : trials) {
            if (!trial.session().isEmpty()) {
                sessions.computeIfAbsent(trial.session(), name -> new ArrayList<>()).add(trial);
            }
        }
        Set<LimiterTrial> firsts = new HashSet<>();
        sessions.values().stream().filter(session -> session.size() > 1).forEach(session -> session.stream()
                .min(Comparator.comparingDouble(trial -> Double.isNaN(trial.order()) ? 0 : trial.order())).ifPresent(firsts::add));
        return firsts;
    }

    Map<String, String> levels() {
        return levels;
    }

    List<LimiterTrial> all() {
        return all;
    }

    List<LimiterTrial> soaked() {
        return soaked;
    }

    /** Trials that began cold: all but the soaked ones. */
    List<LimiterTrial> cold() {
        return all.stream().filter(trial -> !soaked.contains(trial)).toList();
    }

    String name() {
        return String.join(", ", levels.entrySet().stream().map(level -> level.getKey() + " " + level.getValue()).toList());
    }

    /** Whether most logs show the rest before the work. */
    boolean beginIsSeen() {
        return 2 * all.stream().filter(trial -> trial.trace().work().beginIsSeen()).count() > all.size();
    }

    /** Whether a channel was measured in most soaked trials. */
    boolean has(Channel channel) {
        return 2 * soaked.stream().filter(trial -> trial.trace().level(channel).isPresent()).count() > soaked.size();
    }

    /**
     * Sustained level over the soaked trials: the mean over the sessions of each session's median, so that a day of other air counts by its
     * share and a disturbed trial does not; NaN when not measured.
     */
    double mean(Channel channel) {
        Map<String, List<LimiterTrial>> sessions = new LinkedHashMap<>();
        soaked.forEach(trial -> sessions.computeIfAbsent(trial.session(), name -> new ArrayList<>()).add(trial));
        return sessions.values().stream().mapToDouble(session -> median(session, trial -> trial.trace().level(channel).map(Level::mean).orElse(Double.NaN)))
                .filter(value -> !Double.isNaN(value)).average().orElse(Double.NaN);
    }

    /** Median over the soaked trials of the slow wandering inside the last half; NaN when not measured. */
    double wander(Channel channel) {
        return overTrials(channel, Level::wander);
    }

    double relativeWander(Channel channel) {
        return overTrials(channel, Level::relativeWander);
    }

    /** Median scatter of the rows around their trend, relative to their mean; NaN when not measured. */
    double relativeScatter(Channel channel) {
        return overTrials(channel, level -> level.scatter() / Math.abs(level.mean()));
    }

    /** Median change along the straight line through the last half; NaN when not measured. */
    double drift(Channel channel) {
        return median(soaked, trial -> trial.trace().level(channel).map(Level::trendPerMinute).orElse(Double.NaN) * trial.trace().work().lengthSeconds() / 120);
    }

    private double overTrials(Channel channel, ToDoubleFunction<Level> value) {
        return median(soaked, trial -> trial.trace().level(channel).map(value::applyAsDouble).orElse(Double.NaN));
    }

    /** Sustained levels of every channel that was measured. */
    Map<Channel, Double> sustained() {
        Map<Channel, Double> sustained = new EnumMap<>(Channel.class);
        for (Channel channel : Channel.values()) {
            if (channel != Channel.TIME && has(channel)) {
                sustained.put(channel, mean(channel));
            }
        }
        return sustained;
    }

    /** Median over these trials of what is not NaN; NaN when nothing is left. */
    static double median(List<LimiterTrial> trials, ToDoubleFunction<LimiterTrial> value) {
        return Median.of(trials.stream().mapToDouble(value).toArray());
    }

    /**
     * Length of the boost as it is in lasting use: it shrinks from trial to trial while the device soaks, so that each session counts by its last
     * trial. The median over the sessions, over all soaked trials where sessions or their order are not known.
     */
    double boostSeconds() {
        boolean ordered = soaked.stream().noneMatch(trial -> trial.session().isEmpty() || Double.isNaN(trial.order()));
        Map<String, LimiterTrial> last = new LinkedHashMap<>();
        soaked.forEach(trial -> last.merge(trial.session(), trial, (one, other) -> one.order() > other.order() ? one : other));
        return median(ordered ? List.copyOf(last.values()) : soaked, trial -> trial.trace().boost().seconds());
    }

    /** Power at two to six seconds over sustained power; NaN when not measured. */
    double boostRatio() {
        return median(soaked, trial -> trial.trace().boost().watts() / trial.trace().mean(trial.trace().powerChannel()).orElse(Double.NaN));
    }
}
