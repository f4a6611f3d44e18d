package coldproof.reason.limiter;

import coldproof.quantity.Interval;
import coldproof.trace.Channel;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Looks for what is pinned inside the trials of one condition, and at which level. */
final class EvidenceFinder {
    private static final double BOOST = 1.08; // power above sustained at the start that counts as a boost; as TraceSummary's boost
    private static final double MOST_SAG = 0.06; // of power over half a trial
    private static final double SAME_START = 0.01; // what a supply gives, it gives from the first second
    private static final double BUSY = 95; // % utilisation from which a processor counts as fully busy
    private static final double AT_POWER = 0.025; // relative: power sensors and their calibration differ by a few per cent (common practice)
    private static final double LEAST_LIKELY = 0.0005; // judged likelihoods are no finer than this
    private static final double SAME_LEVEL = 0.02; // relative; pinned levels further apart are two levels
    private static final double EQUAL_LEVEL = 0.007; // relative; pinned levels nearer than this are one: controllers hold them better than sensors tell
    private static final double AT_TOP = 0.005;

    private final Condition condition;
    private final StudyLimits limits;
    private final List<Condition> conditions;
    private final Channel power;
    private final List<Evidence> found = new ArrayList<>();

    EvidenceFinder(Condition condition, StudyLimits limits, List<Condition> conditions) {
        this.condition = condition;
        this.limits = limits;
        this.conditions = conditions;
        power = condition.has(Channel.PACKAGE_POWER) ? Channel.PACKAGE_POWER : Channel.SYSTEM_POWER;
    }

    List<Evidence> find(Optional<Elasticity> followsClock) {
        power();
        clock();
        die();
        held();
        boost();
        levels();
        battery();
        utilisation();
        followsClock.ifPresent(this::follows);
        return found;
    }

    private void add(String text, double heat, double power, double clock, double supply, double workload) {
        found.add(new Evidence(text, false, heat, power, clock, supply, workload));
    }

    private void addOfTheWork(String text, double processor, double workload) {
        found.add(new Evidence(text, true, processor, processor, processor, processor, workload));
    }

    private static String text(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }

    private void power() {
        if (!condition.has(power)) {
            return;
        }
        double watts = condition.mean(power);
        double wander = 100 * condition.relativeWander(power);
        if (Double.isNaN(wander)) {
            return;
        }
        if (StudyLimits.isPowerFlat(condition)) {
            add(text("power is pinned: it stays at %.2f W and wanders by %.2f %% only", watts, wander), 0.4, 0.97,
                    StudyLimits.isClockFlat(condition) ? 0.4 : 0.04, 0.97, 0.45);
        } else if (sags()) {
            add(text("power falls evenly, by %.1f %% over the last half, and wanders by %.2f %% only, as from a battery that tires or cools",
                    -100 * condition.drift(power) / watts, wander), 0.5, 0.1, 0.4, 0.9, 0.45);
        } else {
            double drift = 100 * condition.drift(power) / watts;
            add(text("power is not pinned: around %.2f W it wanders by %.2f %% and drifts by %.1f %%", watts, wander, drift), 0.7, 0.02, 0.95, 0.03, 0.6);
        }
    }

    /** Whether power follows a falling line as closely as pinned power its level, on battery. */
    private boolean sags() {
        double drift = condition.drift(power) / condition.mean(power);
        return Change.isOnBattery(condition) && condition.relativeWander(power) < StudyLimits.FLAT_POWER && drift < -StudyLimits.STILL_POWER && drift > -MOST_SAG;
    }

    private void clock() {
        if (!condition.has(Channel.CLOCK) || Double.isNaN(condition.wander(Channel.CLOCK))) {
            return;
        }
        double megahertz = condition.mean(Channel.CLOCK);
        double wander = 100 * condition.relativeWander(Channel.CLOCK);
        boolean top = megahertz > (1 - AT_TOP) * limits.topMegahertz();
        if (!StudyLimits.isClockFlat(condition)) {
            add(text("the clock is not pinned: around %.0f MHz it wanders by %.2f %%", megahertz, wander), 0.97, 0.97, 0.02, 0.97, 0.5);
        } else if (top) {
            add(text("the clock is pinned at its highest, %.0f MHz, and wanders by %.2f %%", megahertz, wander), 0.02, 0.03, 0.98, 0.03, 0.5);
        } else if (!StudyLimits.isPowerFlat(condition) && limits.dieAtLimit(condition) <= 0) {
            add(text("the clock is pinned at %.0f MHz, below the highest seen, %.0f MHz", megahertz, limits.topMegahertz()), 0.05, 0.1, 0.8, 0.1, 0.5);
        }
    }

    private void die() {
        int at = limits.dieAtLimit(condition);
        double die = StudyLimits.dieTop(condition);
        String limit = text(limits.dieStated() ? "the stated limit of %.1f °C" : "the %.1f °C at which heat holds it", limits.dieCelsius());
        if (at > 0) {
            add(text("the die is at %.1f °C, as good as at %s", die, limit), 0.97, 0.06, 0.04, 0.05, 0.3);
        } else if (at < 0) {
            add(text("the die stays %.1f K below %s", limits.dieCelsius() - die, limit), 0.01, 0.9, 0.9, 0.9, 0.75);
        } else if (condition.has(Channel.DIE_TEMPERATURE) && Math.abs(condition.drift(Channel.DIE_TEMPERATURE)) > 2 * StudyLimits.STILL_DIE) {
            add(text("the die is not held: it drifts by %.1f K over the last half", condition.drift(Channel.DIE_TEMPERATURE)), 0.05, 0.6, 0.6, 0.6, 0.5);
        }
    }

    private void held() {
        Held held = Held.of(condition);
        switch (held.which()) {
            case DIE -> {
                if (!StudyLimits.isClockFlat(condition)) {
                    add(text("over trials and minutes power moves, by what would be worth %2$.1f K of die, and the die stays within %1$.2f K: the die is held", held.dieKelvins(),
                            held.powerKelvins()), 0.9, 0.02, 0.3, 0.02, 0.3);
                }
            }
            case POWER -> add(text("over trials and minutes the die moves by %.2f K and power stays, within what would be worth %.2f K of die: power is held",
                    held.dieKelvins(), held.powerKelvins()), 0.02, 0.9, 0.7, 0.9, 0.7);
            case NEITHER_SHOWN -> {
                // Too little moved, or both did: no evidence either way.
            }
        }
    }

    private void boost() {
        double seconds = condition.boostSeconds();
        double ratio = condition.boostRatio();
        if (Double.isNaN(seconds) || Double.isNaN(ratio)) {
            return;
        }
        if (seconds > 0 && ratio >= BOOST) {
            add(text("power begins %.0f %% above what is sustained and falls after %.1f s", 100 * (ratio - 1), seconds), 0.85, 0.93, 0.05, 0.05, 0.45);
        } else if (!condition.beginIsSeen()) {
            return; // a boost may have been over before the log began
        } else if (Math.abs(ratio - 1) < SAME_START) {
            add("power begins at its sustained level: there is no boost", 0.05, 0.06, 0.95, 0.9, 0.55);
        } else if (sags()) {
            add(text("power begins %.1f %% off its sustained level", 100 * (ratio - 1)), 0.3, 0.3, 0.6, 0.6, 0.5);
        } else {
            add(text("power begins %.1f %% off its sustained level", 100 * (ratio - 1)), 0.5, 0.5, 0.6, 0.1, 0.5);
        }
    }

    /** Where pinned power lies against the stated limit and against pinned power under other conditions. */
    private void levels() {
        if (!condition.has(power) || !StudyLimits.isPowerFlat(condition)) {
            return;
        }
        double watts = condition.mean(power);
        if (power == Channel.PACKAGE_POWER && !Double.isNaN(limits.packageWatts())) {
            double away = watts / limits.packageWatts() - 1;
            if (Math.abs(away) <= AT_POWER) {
                add(text("that is the stated power limit of %.4g W", limits.packageWatts()), 0.1, 0.97, 0.1, 0.08, 0.3);
            } else if (away < 0) {
                add(text("that is %.1f %% below the stated power limit of %.4g W", -100 * away, limits.packageWatts()), 0.9, 0.02, 0.5, 0.9, 0.5);
            }
        }
        if (StudyLimits.isPowerHeld(condition)) {
            againstOthers(watts);
        }
    }

    private void againstOthers(double watts) {
        List<Condition> others = conditions.stream().filter(other -> other != condition && other.has(power) && StudyLimits.isPowerHeld(other)).toList();
        double highest = others.stream().mapToDouble(other -> other.mean(power)).max().orElse(Double.NaN);
        double lowest = others.stream().mapToDouble(other -> other.mean(power)).min().orElse(Double.NaN);
        boolean moved = others.stream().anyMatch(other -> Math.abs(other.mean(power) / watts - 1) < EQUAL_LEVEL
                && Math.abs(Quantity.DIE.between(condition, other).estimate()) > Quantity.DIE.margin());
        if (watts < (1 - SAME_LEVEL) * highest) {
            add(text("under another condition power is pinned higher, at %.2f W: no fixed limit of the package holds it here", highest), 0.9, 0.04, 0.5, 0.9, 0.5);
        } else if (watts > (1 + SAME_LEVEL) * lowest) {
            add(text("under another condition power is pinned lower, at %.2f W", lowest), 0.6, 0.4, 0.4, 0.6, 0.4);
        } else if (moved) {
            add("under another condition power is pinned at this same level, with another die temperature", 0.05, 0.9, 0.1, 0.4, 0.3);
        }
    }

    private void battery() {
        if (Change.isOnBattery(condition)) {
            add("the device runs from its battery", 0.3, 0.3, 0.3, 0.6, 0.4);
        } else if (condition.has(Channel.BATTERY_CHARGE)) {
            add("the battery's charge stands still", 0.7, 0.7, 0.7, 0.45, 0.6);
        }
    }

    private void utilisation() {
        double busy = condition.mean(Channel.UTILISATION);
        if (Double.isNaN(busy)) {
            return;
        }
        if (busy >= BUSY) {
            addOfTheWork(text("the processor is busy: utilisation %.0f %%", busy), 0.97, 0.45); // work that stalls on memory reads as busy
        } else if (isWholeShare(busy)) {
            addOfTheWork(text("utilisation is %.1f %%, which a few of several cores at full load show as well", busy), 0.3, 0.4);
        } else {
            addOfTheWork(text("the processor waits: utilisation %.0f %%", busy), 0.005, 0.7);
        }
    }

    /** Whether it may be one or more whole cores of two, four, six or eight that are busy. */
    private static boolean isWholeShare(double percent) {
        for (int cores : new int[] {2, 4, 6, 8}) {
            double busyCores = percent / 100 * cores;
            if (percent <= 52 && Math.abs(busyCores - Math.rint(busyCores)) < 0.015 * cores) {
                return true;
            }
        }
        return false;
    }

    private void follows(Elasticity slope) {
        double follows = slope.whenFollowing();
        double not = slope.whenNotFollowing();
        double most = Math.max(follows, not);
        double processor = Math.max(LEAST_LIKELY, follows / most);
        Interval range = slope.interval();
        addOfTheWork(text("for each per cent of %s the rate moves by %.2f %% (95 %% interval %.2f to %.2f)", slope.driver().word(), slope.slope(), range.low(), range.high()),
                processor, Math.max(LEAST_LIKELY, not / most));
    }
}
