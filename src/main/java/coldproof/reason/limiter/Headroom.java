package coldproof.reason.limiter;

import coldproof.quantity.Interval;
import coldproof.stats.distribution.StudentT;
import coldproof.stats.interval.Moments;
import coldproof.trace.Channel;
import java.util.List;
import java.util.Optional;

/**
 * The air at which the limiter of a condition would change, if the device keeps its resistance and its fan: power limit or clock ceiling
 * give way to heat in warmer air, {@code limit - (die - air)}; heat gives way to the power limit in colder air, {@code limit - R P}.
 *
 * @param airCelsius where the limits meet, °C
 * @param interval 95 % interval from the scatter of the trials; empty with fewer than two trials
 * @param then what limits beyond
 * @param fanMayChange whether the fan was not at a fixed speed, so that the true figure lies further off
 */
public record Headroom(double airCelsius, Optional<Interval> interval, Limiter then, boolean fanMayChange) {
    private static final double LEVEL = 0.95;
    private static final double STEADY_FAN = 0.02; // relative spread between conditions that is none

    /** Headroom of a condition; empty when limit, die or air are not known, or the limiter is neither heat, power nor the clock. */
    static Optional<Headroom> of(Condition condition, Limiter limiter, StudyLimits limits, double plateauWatts, List<Condition> conditions) {
        boolean heat = limiter == Limiter.HEAT;
        boolean below = limiter == Limiter.POWER || limiter == Limiter.CLOCK;
        if (!heat && !below || Double.isNaN(limits.dieCelsius()) || heat && Double.isNaN(plateauWatts)) {
            return Optional.empty();
        }
        double[] meeting = condition.soaked().stream().mapToDouble(trial -> {
            double air = trial.trace().thermal().airCelsius();
            double die = trial.trace().mean(Channel.DIE_TEMPERATURE).orElse(Double.NaN);
            return heat ? limits.dieCelsius() - trial.trace().thermal().kelvinsPerWatt() * plateauWatts : limits.dieCelsius() - (die - air);
        }).filter(Double::isFinite).toArray();
        if (meeting.length == 0) {
            return Optional.empty();
        }
        Moments air = Moments.of(meeting);
        Optional<Interval> interval = air.count() < 2 ? Optional.empty() : Optional.of(interval(air));
        return Optional.of(new Headroom(air.mean(), interval, heat ? Limiter.POWER : Limiter.HEAT, fanChanges(condition, conditions)));
    }

    private static Interval interval(Moments air) {
        double half = StudentT.upperPoint((1 - LEVEL) / 2, air.count() - 1) * air.standardError();
        return new Interval(LEVEL, air.mean() - half, air.mean() + half);
    }

    private static boolean fanChanges(Condition condition, List<Condition> conditions) {
        double own = condition.mean(Channel.FAN);
        double drift = condition.drift(Channel.FAN);
        boolean othersDiffer = conditions.stream().anyMatch(other -> Math.abs(other.mean(Channel.FAN) / own - 1) > STEADY_FAN);
        return own > 0 && (Math.abs(drift / own) > STEADY_FAN || othersDiffer);
    }
}
