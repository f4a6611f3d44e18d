package coldproof.reason.limiter;

import coldproof.quantity.LogRatio;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Puts every prediction of every hypothesis about the changes that were made to the test. */
final class Predictions {
    private static final String NOT_TRIED = "not tried";

    private Predictions() {}

    /** All predictions that start from a condition. */
    static List<Prediction> from(Condition condition, List<Change> changes) {
        List<Prediction> predictions = new ArrayList<>();
        for (Change change : changes) {
            if (change.from() == condition) {
                Map<Quantity, Effect> effects = new EnumMap<>(Quantity.class);
                for (Quantity quantity : Quantity.values()) {
                    Effect effect = quantity.between(change.from(), change.to());
                    if (quantity != Quantity.FAN || !Double.isNaN(effect.estimate())) {
                        effects.put(quantity, effect);
                    }
                }
                for (Hypothesis hypothesis : Hypothesis.values()) {
                    effects.forEach((quantity, effect) -> {
                        Cell cell = change.kind().cell(hypothesis, quantity);
                        if (!cell.isFree()) {
                            predictions.add(new Prediction(hypothesis, condition.levels(), change.words(), quantity.word(), cell.words(),
                                    observed(quantity, effect), cell.test(effect)));
                        }
                    });
                }
            }
        }
        return predictions;
    }

    /** What the changes that nobody made would show: the rest of the changes that tell all hypotheses apart. */
    static List<Prediction> notTried(List<Change> changes) {
        List<Prediction> predictions = new ArrayList<>();
        for (ChangeKind kind : ChangeKind.DISCRIMINATING) {
            if (changes.stream().noneMatch(change -> change.kind() == kind)) {
                for (Hypothesis hypothesis : Hypothesis.values()) {
                    for (Quantity quantity : Quantity.values()) {
                        Cell cell = kind.cell(hypothesis, quantity);
                        if (!cell.isFree()) {
                            predictions.add(new Prediction(hypothesis, Map.of(), kind.words(), quantity.word(), cell.words(), NOT_TRIED, Prediction.Result.UNTESTED));
                        }
                    }
                }
            }
        }
        return predictions;
    }

    private static String observed(Quantity quantity, Effect effect) {
        if (Double.isNaN(effect.estimate())) {
            return "not measured";
        }
        String range = effect.interval95().map(interval -> " (95 % interval " + size(quantity, interval.low()) + " to " + size(quantity, interval.high()) + ")")
                .orElse(" (no interval: one session each, or one trial)");
        return size(quantity, effect.estimate()) + (quantity.isRelative() ? " %" : " K") + range;
    }

    private static String size(Quantity quantity, double change) {
        return String.format(Locale.ROOT, "%+.1f", quantity.isRelative() ? LogRatio.toPercent(change) : change);
    }
}
