package coldproof.machine.sensors;

import coldproof.trace.Channel;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;

/**
 * The kind of system, and what of the library's answers is a measurement on it. What the library makes of other figures there (a nominal clock,
 * a fan's desired speed, a zone of the firmware that may be any place or none) is left out rather than recorded under a name it does not earn.
 */
enum HostSystem {
    /** The kernel's files give the rest; the library's clock is the one of the processor table, for machines without a frequency driver. */
    LINUX("looked in hwmon, thermal zones, powercap and cpufreq", EnumSet.of(Channel.CLOCK)),
    /** Sensors of the system controller. The clock it shows is nominal. */
    MACOS("power and clock take a tool of the system with the administrator's rights",
            EnumSet.of(Channel.DIE_TEMPERATURE, Channel.FAN, Channel.UTILISATION, Channel.BATTERY_CHARGE, Channel.BATTERY_TEMPERATURE, Channel.SYSTEM_POWER)),
    /** Temperatures and fans need a driver of the maker; the clock it shows never goes above the nominal one, so boost cannot be seen. */
    WINDOWS("they take a driver of the maker; import its log with trace",
            EnumSet.of(Channel.UTILISATION, Channel.BATTERY_CHARGE, Channel.BATTERY_TEMPERATURE, Channel.SYSTEM_POWER)),
    /** The library asks other programs for most things there, which a test cannot afford once a second. */
    OTHER("this system is asked for little", EnumSet.of(Channel.UTILISATION));

    private final String looked;
    private final Set<Channel> measured;

    HostSystem(String looked, Set<Channel> measured) {
        this.looked = looked;
        this.measured = measured;
    }

    /** Where was looked, or why the rest is not there, in a few words. */
    String looked() {
        return looked;
    }

    /** What the library measures here. */
    Set<Channel> measured() {
        return EnumSet.copyOf(measured);
    }

    /** The system of a name as Java gives it in {@code os.name}. */
    static HostSystem named(String name) {
        String lower = name.toLowerCase(Locale.ROOT);
        if (lower.startsWith("linux")) {
            return LINUX;
        }
        return lower.startsWith("mac") ? MACOS : lower.startsWith("windows") ? WINDOWS : OTHER;
    }
}
