package coldproof.reason.limiter;

import coldproof.trace.Channel;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The limits of the device: as the maker states them, else as the trials show them.
 *
 * @param dieCelsius temperature limit; NaN when neither stated nor shown
 * @param dieStated whether the maker stated it
 * @param dieFromSaw whether it was read off a die that swings below it, which tells it less well
 * @param packageWatts stated long-term power limit; NaN when not stated
 * @param topMegahertz stated highest clock, else the highest ever seen; NaN without clocks
 */
record StudyLimits(double dieCelsius, boolean dieStated, boolean dieFromSaw, double packageWatts, double topMegahertz) {
    /** Power this flat, relative, is held by a controller; free-running power wanders by one per cent and more with the work. */
    static final double FLAT_POWER = 0.004;
    /** Nor may held power drift by more than this over the last half. */
    static final double STILL_POWER = 0.01;
    /** A clock this flat, relative, sits at a ceiling. */
    static final double FLAT_CLOCK = 0.0015;
    /** Nor may it drift by more than this over the last half. */
    static final double STILL_CLOCK = 0.003;
    /** A die that drifts by less than this over the last half, K, is held or has come to rest. */
    static final double STILL_DIE = 1.0;
    /** A die this near its limit, K, is at it: accuracy of die sensors, and the lag of their reading (common practice). */
    static final double AT_LIMIT = 1.5;
    /** A die further below its limit than this, K, is not at it. */
    static final double BELOW_LIMIT = 3.0;
    /** Powers that differ by more than this, log, differ. */
    private static final double OTHER_POWER = 0.03;
    /** A heat controller that trips and releases moves the clock by more than this, relative. */
    static final double SAW_CLOCK = 0.025;
    /** And lets the die fall at most this far below the limit, K; common practice. */
    static final double SAW_BAND = 12;

    static StudyLimits of(KnownLimits known, List<Condition> conditions) {
        double top = known.clockMegahertz().orElse(highestClock(conditions));
        double die = known.dieCelsius().orElse(shownDieLimit(conditions));
        boolean saw = known.dieCelsius().isEmpty() && conditions.stream().filter(condition -> dieTop(condition) == die).anyMatch(StudyLimits::isSaw);
        return new StudyLimits(die, known.dieCelsius().isPresent(), saw, known.packageWatts().orElse(Double.NaN), top);
    }

    private static double highestClock(List<Condition> conditions) {
        return conditions.stream().flatMap(condition -> condition.all().stream())
                .mapToDouble(trial -> Arrays.stream(trial.trace().blocks().channels().getOrDefault(Channel.CLOCK, new double[0]))
                        .filter(value -> !Double.isNaN(value)).max().orElse(Double.NaN))
                .filter(value -> !Double.isNaN(value)).max().orElse(Double.NaN);
    }

    /** The highest level at which the die stands still although power does not: only a heat controller does that. */
    private static double shownDieLimit(List<Condition> conditions) {
        OptionalDouble held = conditions.stream().filter(condition -> onlyTheDieIsHeld(condition) || isHeldAcross(condition, conditions))
                .mapToDouble(StudyLimits::dieTop).max();
        double highest = conditions.stream().mapToDouble(StudyLimits::dieTop).filter(value -> !Double.isNaN(value)).max().orElse(Double.NaN);
        return held.isPresent() && held.getAsDouble() > highest - BELOW_LIMIT ? held.getAsDouble() : Double.NaN;
    }

    private static boolean onlyTheDieIsHeld(Condition condition) {
        if (!condition.has(Channel.DIE_TEMPERATURE) || isClockFlat(condition) || Math.abs(condition.drift(Channel.DIE_TEMPERATURE)) > STILL_DIE) {
            return false;
        }
        boolean free = !isPowerFlat(condition) && (condition.has(Channel.PACKAGE_POWER) || condition.has(Channel.SYSTEM_POWER));
        return isSaw(condition) || (free || Held.of(condition).which() == Held.Which.DIE) && condition.wander(Channel.DIE_TEMPERATURE) < STILL_DIE;
    }

    /** Whether another condition holds the die at this same level with another power. */
    private static boolean isHeldAcross(Condition condition, List<Condition> conditions) {
        return conditions.stream().anyMatch(other -> Math.abs(dieTop(other) - dieTop(condition)) < STILL_DIE && !isClockFlat(other) && !isClockFlat(condition)
                && Math.abs(Quantity.POWER.between(condition, other).estimate()) > OTHER_POWER);
    }

    /** Highest the die goes in the last half, but for single rows: near the limit also where it swings below it. */
    static double dieTop(Condition condition) {
        return Condition.median(condition.soaked(), trial -> {
            double[] blocks = lastHalf(trial, Channel.DIE_TEMPERATURE);
            Arrays.sort(blocks);
            return blocks.length == 0 ? Double.NaN : isSaw(condition) ? blocks[(int) (0.95 * (blocks.length - 1))] : trial.trace().mean(Channel.DIE_TEMPERATURE).orElse(Double.NaN);
        });
    }

    static double[] lastHalf(LimiterTrial trial, Channel channel) {
        double[] blocks = trial.trace().blocks().channels().getOrDefault(channel, new double[0]);
        return Arrays.stream(blocks, blocks.length / 2, blocks.length).filter(value -> !Double.isNaN(value)).toArray();
    }

    /** Whether the clock swings up and down by more than work alone makes it, as under a heat controller that trips and releases. */
    static boolean isSaw(Condition condition) {
        return condition.relativeScatter(Channel.CLOCK) > SAW_CLOCK;
    }

    static boolean isPowerFlat(Condition condition) {
        return isFlat(condition, Channel.PACKAGE_POWER, FLAT_POWER, STILL_POWER) || isFlat(condition, Channel.SYSTEM_POWER, FLAT_POWER, STILL_POWER);
    }

    /** Whether power is flat, and not only because a die that is held has come to rest. */
    static boolean isPowerHeld(Condition condition) {
        return isPowerFlat(condition) && Held.of(condition).which() != Held.Which.DIE;
    }

    static boolean isClockFlat(Condition condition) {
        return isFlat(condition, Channel.CLOCK, FLAT_CLOCK, STILL_CLOCK);
    }

    private static boolean isFlat(Condition condition, Channel channel, double wander, double drift) {
        return condition.has(channel) && condition.relativeWander(channel) < wander && Math.abs(condition.drift(channel) / condition.mean(channel)) < drift;
    }

    /** Whether the die is at its limit: 1 yes, -1 no, 0 cannot be told. */
    int dieAtLimit(Condition condition) {
        double die = dieTop(condition);
        if (Double.isNaN(die) || Double.isNaN(dieCelsius)) {
            return 0;
        }
        boolean near = die > dieCelsius - AT_LIMIT && !dieFromSaw;
        boolean swings = isSaw(condition) && condition.mean(Channel.DIE_TEMPERATURE) > dieCelsius - SAW_BAND;
        return near || swings && die > dieCelsius - BELOW_LIMIT ? 1 : die < dieCelsius - BELOW_LIMIT ? -1 : 0;
    }
}
