package coldproof.reason.limiter;

import coldproof.trace.Channel;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Which channels sit at one value under each condition, by the same borders as the answer about the limiter. */
public final class PinnedChannels {
    private PinnedChannels() {}

    /**
     * The pinned channels by levels of the condition, in the order of their first trial.
     *
     * @param trials one or more trials; those of equal levels form a condition
     * @param known limits the maker states
     */
    public static Map<Map<String, String>, Set<Channel>> of(List<LimiterTrial> trials, KnownLimits known) {
        List<Condition> conditions = Condition.of(trials);
        StudyLimits limits = StudyLimits.of(known, conditions);
        Map<Map<String, String>, Set<Channel>> pinned = new LinkedHashMap<>();
        conditions.forEach(condition -> pinned.put(condition.levels(), of(condition, limits)));
        return pinned;
    }

    private static Set<Channel> of(Condition condition, StudyLimits limits) {
        Set<Channel> pinned = EnumSet.noneOf(Channel.class);
        if (StudyLimits.isPowerFlat(condition)) {
            pinned.add(condition.has(Channel.PACKAGE_POWER) ? Channel.PACKAGE_POWER : Channel.SYSTEM_POWER);
        }
        if (StudyLimits.isClockFlat(condition)) {
            pinned.add(Channel.CLOCK);
        }
        if (limits.dieAtLimit(condition) > 0) {
            pinned.add(Channel.DIE_TEMPERATURE);
        }
        return pinned;
    }
}
