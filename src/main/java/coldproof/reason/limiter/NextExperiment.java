package coldproof.reason.limiter;

import coldproof.trace.Channel;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Chooses the experiment whose predictions differ most between the hypotheses that are left. */
final class NextExperiment {
    private NextExperiment() {}

    static String of(List<Condition> conditions, List<LimiterAnswer.OfCondition> answers, List<Change> changes) {
        for (int i = 0; i < answers.size(); i++) {
            if (answers.get(i).limiter() == Limiter.UNCLEAR) {
                return "Under " + conditions.get(i).name() + ": " + toSettle(conditions.get(i), answers.get(i), changes);
            }
        }
        return whenClear(conditions, answers, changes);
    }

    private static String toSettle(Condition condition, LimiterAnswer.OfCondition answer, List<Change> changes) {
        for (Channel needed : new Channel[] {Channel.PACKAGE_POWER, Channel.CLOCK, Channel.DIE_TEMPERATURE}) {
            if (!condition.has(needed) && !(needed == Channel.PACKAGE_POWER && condition.has(Channel.SYSTEM_POWER))) {
                return "log the " + needed.label() + " as well; without it several explanations look alike.";
            }
        }
        List<Hypothesis> left = answer.probabilities().entrySet().stream().sorted(Comparator.comparing(entry -> -entry.getValue())).limit(2)
                .map(Map.Entry::getKey).sorted().toList();
        return between(left.get(0), left.get(1), condition, changes);
    }

    /** The cheapest change that was not made yet and of which the two predict different things. */
    private static String between(Hypothesis a, Hypothesis b, Condition condition, List<Change> changes) {
        if (b == Hypothesis.WORKLOAD) {
            return "set the highest clock a tenth lower and repeat: if " + a.phrase() + " or the clock matters the rate falls with it; if the work itself limits, it stays.";
        }
        boolean fanTried = changes.stream().anyMatch(change -> change.kind() == ChangeKind.COOLED);
        boolean loadTried = changes.stream().anyMatch(change -> change.kind() == ChangeKind.LIGHTER);
        boolean clockInDoubt = a == Hypothesis.CLOCK || b == Hypothesis.CLOCK;
        boolean fanLeft = !fanTried && condition.has(Channel.FAN);
        if (clockInDoubt && !loadTried && !(a == Hypothesis.HEAT && fanLeft)) {
            Hypothesis other = a == Hypothesis.CLOCK ? b : a;
            return "run a lighter load, such as fewer threads: if " + other.phrase() + " limits, the clock rises; if the clock ceiling does, it stays and power falls.";
        }
        if (a == Hypothesis.HEAT) {
            String how = fanTried || !condition.has(Channel.FAN) ? "chill the air" : "set the fan to its maximum";
            return how + ": if heat limits, power and clock rise while the die stays; if " + b.phrase() + " does, power or clock stays and the die falls.";
        }
        if (b == Hypothesis.SUPPLY) {
            return "use another power source, or a stronger adapter, and log system power and battery charge: if the supply limits, power moves; if "
                    + a.phrase() + " does, it stays.";
        }
        return "lower the highest clock a tenth and repeat: if the clock ceiling limits, the rate falls as much; if " + a.phrase() + " does, it hardly falls.";
    }

    private static String whenClear(List<Condition> conditions, List<LimiterAnswer.OfCondition> answers, List<Change> changes) {
        for (int i = 0; i < answers.size(); i++) {
            LimiterAnswer.OfCondition answer = answers.get(i);
            if (answer.headroom().isPresent()) {
                Headroom headroom = answer.headroom().get();
                return String.format(Locale.ROOT, "Nothing is open. To check the answer, repeat %s with air %s %.0f °C: there %s should take over.", conditions.get(i).name(),
                        headroom.then() == Limiter.HEAT ? "above" : "below", headroom.airCelsius(), Hypothesis.valueOf(headroom.then().name()).phrase());
            }
        }
        if (changes.isEmpty()) {
            return "One signal is there, the answer to a change is not: set the fan to its maximum or chill the air, and see whether what is pinned stays pinned.";
        }
        if (answers.stream().anyMatch(answer -> answer.limiter() == Limiter.SUPPLY)) {
            return "Nothing is open. To check the answer, use a stronger adapter, or a fuller and warmer battery: power and rate should rise.";
        }
        return "Nothing is open. To check the answer, lower the highest clock a tenth: the rate should follow unless the work itself limits.";
    }
}
