package coldproof.machine.sensors;

import coldproof.trace.Channel;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * What was found on a machine.
 *
 * @param sensors in the order of their columns
 * @param missing what is not there or may not be read, a sentence each
 * @param power where the power comes from
 */
record FoundSensors(List<Sensor> sensors, List<String> missing, PowerState power) {
    /** Copies. */
    FoundSensors {
        sensors = List.copyOf(sensors);
        missing = List.copyOf(missing);
    }

    /** The channels that some sensor measures. */
    Set<Channel> channels() {
        Set<Channel> channels = EnumSet.noneOf(Channel.class);
        sensors.forEach(sensor -> channels.add(sensor.channel()));
        return channels;
    }

    /** These and those of another place; the power as the other place says where this one does not know. */
    FoundSensors and(FoundSensors other) {
        List<Sensor> all = new ArrayList<>(sensors);
        all.addAll(other.sensors);
        List<String> both = new ArrayList<>(missing);
        both.addAll(other.missing);
        return new FoundSensors(all, both, power == PowerState.UNKNOWN ? other.power : power);
    }
}
