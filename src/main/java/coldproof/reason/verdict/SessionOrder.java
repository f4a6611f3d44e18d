package coldproof.reason.verdict;

import coldproof.quantity.QuantityText;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * In which order sessions were run: by their numbers where all are numbers; else by a run order that runs through; else by the numbers in labels
 * that are otherwise alike, such as dates; else as they first appear, which is the order they were run in only if the rows were written as run.
 */
final class SessionOrder {
    private static final Pattern DIGITS = Pattern.compile("\\d+");
    private static final Pattern OTHER = Pattern.compile("\\D+");
    private static final Pattern DAY_FIRST = Pattern.compile("\\d{1,2}\\.\\d{1,2}\\.\\d{4}");
    private static final Pattern DAY_OR_MONTH_FIRST = Pattern.compile("\\d{1,2}/\\d{1,2}/\\d{2,4}.*");
    private static final int MOST_DIGITS = 18; // of a long

    private final Map<String, List<Observation>> sessions;
    private final boolean known;

    private SessionOrder(Map<String, List<Observation>> sessions, boolean known) {
        this.sessions = sessions;
        this.known = known;
    }

    static SessionOrder of(List<Observation> trials) {
        Map<String, List<Observation>> found = new LinkedHashMap<>();
        trials.forEach(trial -> found.computeIfAbsent(trial.session(), label -> new ArrayList<>()).add(trial));
        List<String> labels = new ArrayList<>(found.keySet());
        if (labels.stream().allMatch(label -> QuantityText.whole(label, 0, Integer.MAX_VALUE).isPresent())) {
            labels.sort(Comparator.comparingInt(label -> QuantityText.whole(label, 0, Integer.MAX_VALUE).getAsInt()));
        } else if (runsThrough(trials)) {
            labels.sort(Comparator.comparingDouble(label -> found.get(label).stream().mapToDouble(Observation::order).average().orElse(0)));
        } else if (areAlikeButForNumbers(labels)) {
            labels.sort((a, b) -> Arrays.compare(numbers(a), numbers(b)));
        } else {
            return new SessionOrder(found, found.values().stream().allMatch(SessionOrder::isWrittenAsRun));
        }
        Map<String, List<Observation>> ordered = new LinkedHashMap<>();
        labels.forEach(label -> ordered.put(label, found.get(label)));
        return new SessionOrder(ordered, true);
    }

    private static boolean runsThrough(List<Observation> trials) {
        return trials.stream().mapToDouble(Observation::order).distinct().count() == trials.size()
                && trials.stream().noneMatch(trial -> Double.isNaN(trial.order()));
    }

    private static boolean areAlikeButForNumbers(List<String> labels) {
        return labels.stream().map(label -> DIGITS.matcher(label).replaceAll("0")).distinct().count() == 1
                && labels.stream().allMatch(label -> DIGITS.matcher(label).find() && !DAY_OR_MONTH_FIRST.matcher(label).matches()
                        && DIGITS.matcher(label).results().allMatch(number -> number.end() - number.start() <= MOST_DIGITS));
    }

    private static long[] numbers(String label) {
        long[] numbers = OTHER.splitAsStream(label).filter(number -> !number.isEmpty()).mapToLong(Long::parseLong).toArray();
        return DAY_FIRST.matcher(label).matches() ? new long[] {numbers[2], numbers[1], numbers[0]} : numbers;
    }

    /** Whether the rows of a session stand in the order its trials were run; false where that is not known. */
    private static boolean isWrittenAsRun(List<Observation> session) {
        for (int i = 0; i < session.size(); i++) {
            double before = i == 0 ? Double.NEGATIVE_INFINITY : session.get(i - 1).order();
            if (!(session.get(i).order() >= before)) {
                return false;
            }
        }
        return true;
    }

    /** The trials of each session, sessions in that order. */
    Map<String, List<Observation>> sessions() {
        return sessions;
    }

    /** Whether that is the order they were run in. */
    boolean isKnown() {
        return known;
    }
}
