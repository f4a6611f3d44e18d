package coldproof.reason.limiter;

import coldproof.trace.Channel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Two conditions that differ in exactly one factor.
 *
 * @param factor what differs
 * @param from the condition before
 * @param to the condition after
 * @param kind what the change is
 */
record Change(String factor, Condition from, Condition to, ChangeKind kind) {
    private static final double AIR_MOVED = 3; // K: more than a room wanders
    private static final double FAN_MOVED = 1.05;
    private static final double PATH_MOVED = 0.05; // relative change of die-to-air resistance that is none of the sensors' making
    private static final double DISCHARGED = 0.25; // % of charge lost in a trial, above which the device runs from its battery
    private static final Pattern TEMPERATURE = Pattern.compile("(-?\\d+(?:[.,]\\d+)?)\\s*°?\\s*([CFK])\\b");
    private static final Set<String> FAN_WORDS = Set.of("fan", "fans", "cooling", "blower");
    private static final Set<String> LOAD_WORDS = Set.of("load", "workload", "work", "threads", "cores", "intensity", "density", "instructions");
    private static final double OTHER_LOAD_POINTS = 5; // % of utilisation
    private static final double OTHER_LOAD = 0.05; // log of power for its clock
    private static final Set<String> SOURCE_WORDS = Set.of("power", "source", "supply", "adapter", "battery", "mains");

    /** All changes, each in both directions. */
    static List<Change> among(List<Condition> conditions) {
        List<Change> changes = new ArrayList<>();
        for (Condition from : conditions) {
            for (Condition to : conditions) {
                onlyDifference(from, to).ifPresent(factor -> changes.add(new Change(factor, from, to, kind(factor, from, to))));
            }
        }
        return changes;
    }

    String words() {
        return kind.words() + " (" + factor + " " + from.levels().get(factor) + " to " + to.levels().get(factor) + ")";
    }

    private static Optional<String> onlyDifference(Condition from, Condition to) {
        List<String> different = from.levels().keySet().stream().filter(factor -> !from.levels().get(factor).equals(to.levels().get(factor))).toList();
        return different.size() == 1 ? Optional.of(different.get(0)) : Optional.empty();
    }

    private static ChangeKind kind(String factor, Condition from, Condition to) {
        if (SOURCE_WORDS.stream().anyMatch(word -> hasWord(factor, word)) || isOnBattery(from) != isOnBattery(to)) {
            return ChangeKind.SOURCE;
        }
        if (isLoad(factor)) {
            return loadKind(from, to);
        }
        double warmer = air(to, factor) - air(from, factor);
        if (Math.abs(warmer) > AIR_MOVED) {
            return warmer < 0 ? ChangeKind.COLDER : ChangeKind.WARMER;
        }
        double faster = to.mean(Channel.FAN) / from.mean(Channel.FAN);
        if (FAN_WORDS.stream().anyMatch(word -> hasWord(factor, word)) && (faster > FAN_MOVED || faster < 1 / FAN_MOVED)) {
            return faster > 1 ? ChangeKind.COOLED : ChangeKind.HINDERED;
        }
        double path = Math.log(resistance(to) / resistance(from));
        if (Math.abs(path) > PATH_MOVED) {
            return path < 0 ? ChangeKind.COOLED : ChangeKind.HINDERED;
        }
        return ChangeKind.OTHER;
    }

    /**
     * A busier processor is more loaded; at the same business the one that needs more power for its clock is. Power goes about as the square of
     * the clock where a limit moves the clock.
     */
    private static ChangeKind loadKind(Condition from, Condition to) {
        double busier = to.mean(Channel.UTILISATION) - from.mean(Channel.UTILISATION);
        if (Math.abs(busier) > OTHER_LOAD_POINTS) {
            return busier > 0 ? ChangeKind.HEAVIER : ChangeKind.LIGHTER;
        }
        double denser = Quantity.POWER.between(from, to).estimate() - 2 * Quantity.CLOCK.between(from, to).estimate();
        return denser > OTHER_LOAD ? ChangeKind.HEAVIER : denser < -OTHER_LOAD ? ChangeKind.LIGHTER : ChangeKind.OTHER;
    }

    private static boolean isLoad(String factor) {
        return LOAD_WORDS.stream().anyMatch(word -> hasWord(factor, word));
    }

    /** Whether both do the same work: else their scores say nothing of one another. */
    boolean keepsTheWork() {
        return !isLoad(factor);
    }

    private static boolean hasWord(String factor, String word) {
        return Arrays.asList(factor.toLowerCase(Locale.ROOT).split("[^a-z]+")).contains(word);
    }

    /** Air as measured, else as the level says. */
    private static double air(Condition condition, String factor) {
        double measured = condition.mean(Channel.AMBIENT);
        return Double.isNaN(measured) ? celsius(condition.levels().get(factor)) : measured;
    }

    private static double celsius(String level) {
        Matcher matcher = TEMPERATURE.matcher(level);
        if (!matcher.find()) {
            return Double.NaN;
        }
        double number = Double.parseDouble(matcher.group(1).replace(',', '.'));
        return switch (matcher.group(2)) {
            case "F" -> (number - 32) / 1.8;
            case "K" -> number - 273.15;
            default -> number;
        };
    }

    static double resistance(Condition condition) {
        return Condition.median(condition.soaked(), trial -> trial.trace().thermal().kelvinsPerWatt());
    }

    /** Whether the battery's charge falls in the trials, or where it is not measured, the levels say battery. */
    static boolean isOnBattery(Condition condition) {
        if (condition.has(Channel.BATTERY_CHARGE)) {
            return Condition.median(condition.all(), Change::chargeLost) > DISCHARGED;
        }
        return saysBattery(condition.levels());
    }

    private static boolean saysBattery(Map<String, String> levels) {
        return levels.values().stream().anyMatch(level -> level.toLowerCase(Locale.ROOT).contains("battery"));
    }

    /** Percent of charge by which the trial's charge falls, by the straight line through its last half. */
    private static double chargeLost(LimiterTrial trial) {
        return trial.trace().level(Channel.BATTERY_CHARGE).map(level -> -level.trendPerMinute() * trial.trace().work().lengthSeconds() / 60).orElse(Double.NaN);
    }
}
