package coldproof.reason.verdict;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The pairs that have a trial of each level, in the order they first appear. */
final class WholePairs {
    private final Question question;
    private final List<List<Observation>> whole;

    WholePairs(Question question, List<Observation> trials) {
        this.question = question;
        Map<String, List<Observation>> byPair = new LinkedHashMap<>();
        trials.forEach(trial -> byPair.computeIfAbsent(trial.pair(), label -> new ArrayList<>()).add(trial));
        whole = byPair.values().stream().filter(pair -> pair.stream().map(Observation::level).distinct().count() == 2).toList();
    }

    /** Their trials, all that they hold. */
    List<Observation> trials() {
        return whole.stream().flatMap(List::stream).toList();
    }

    /** One trial of each level, baseline first; several trials of a level stand as the last of them with their geometric mean. */
    List<Observation[]> pairs() {
        return whole.stream().map(pair -> new Observation[] {asOne(question.baseline(), pair), asOne(question.against(), pair)}).toList();
    }

    private static Observation asOne(String level, List<Observation> pair) {
        List<Observation> same = pair.stream().filter(trial -> trial.level().equals(level)).toList();
        Observation last = same.get(same.size() - 1);
        return same.size() == 1 ? last : last.withScore(Math.exp(same.stream().mapToDouble(trial -> Math.log(trial.score())).average().orElseThrow()));
    }
}
