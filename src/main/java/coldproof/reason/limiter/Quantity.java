package coldproof.reason.limiter;

import coldproof.trace.Channel;
import java.util.function.ToDoubleFunction;

/** What a hypothesis predicts about. Relative ones are handled as logarithms. */
enum Quantity {
    PERFORMANCE("performance", true, 0.01),
    DIE("die temperature", false, 2),
    POWER("power", true, 0.01),
    CLOCK("clock", true, 0.01),
    /** Every hypothesis predicts the same of it, so it tells only whether the fan was on automatic as supposed. */
    FAN("fan speed", true, 0.03);

    private final String word;
    private final boolean relative;
    private final double margin;

    Quantity(String word, boolean relative, double margin) {
        this.word = word;
        this.relative = relative;
        this.margin = margin;
    }

    String word() {
        return word;
    }

    /** Whether changes are ratios, as logarithms; else differences in K. */
    boolean isRelative() {
        return relative;
    }

    /** A change smaller than this counts as none: log for ratios, K for temperatures; as accurate as sensors are (common practice). */
    double margin() {
        return margin;
    }

    Effect between(Condition from, Condition to) {
        boolean score = this == PERFORMANCE;
        return Effect.of(score ? from.all() : from.soaked(), score ? to.all() : to.soaked(), value());
    }

    private ToDoubleFunction<LimiterTrial> value() {
        return switch (this) {
            case PERFORMANCE -> LimiterTrial::logScore;
            case DIE -> trial -> trial.trace().mean(Channel.DIE_TEMPERATURE).orElse(Double.NaN);
            case POWER -> trial -> Math.log(trial.trace().mean(trial.trace().powerChannel()).orElse(Double.NaN));
            case CLOCK -> trial -> Math.log(trial.trace().mean(Channel.CLOCK).orElse(Double.NaN));
            case FAN -> trial -> Math.log(trial.trace().mean(Channel.FAN).orElse(Double.NaN));
        };
    }
}
