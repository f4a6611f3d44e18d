package coldproof.trace;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What one trace says.
 *
 * @param rows rows read
 * @param samplingSeconds usual time between rows in s
 * @param gaps how often rows were missing
 * @param map which column was which channel
 * @param work when the device worked
 * @param phases the phases of the work, in order
 * @param boost the boost at its beginning
 * @param sustained levels over the last half of the work, for each measured channel
 * @param whole means over the whole work
 * @param before means in the rows before the work; empty when the log begins with it
 * @param settleSeconds from the start of the work until power, clock and die temperature stay near their sustained levels; NaN when they never do
 * @param thermal what heat does
 * @param energyWattHours energy of the work, from package power, or system power where that alone was measured; NaN without
 * @param unsteady what still moved in the last half, in plain words; empty when steady
 * @param blocks the work in short blocks
 * @param changes when the level of power changed, s from the start of the work, by optimal segmentation
 * @param remarks what the person should know of the log, by line
 */
public record TraceSummary(long rows, double samplingSeconds, int gaps, ChannelMap map, Work work, List<Phase> phases, Boost boost,
        Map<Channel, Level> sustained, Map<Channel, Double> whole, Map<Channel, Double> before, double settleSeconds, Thermal thermal,
        double energyWattHours, List<String> unsteady, Blocks blocks, List<Double> changes, List<TraceRemark> remarks) {

    /** Copies its lists and maps. */
    public TraceSummary {
        phases = List.copyOf(phases);
        unsteady = List.copyOf(unsteady);
        changes = List.copyOf(changes);
        remarks = List.copyOf(remarks);
        sustained = copy(sustained);
        whole = copy(whole);
        before = copy(before);
    }

    /**
     * What heat does in a trial.
     *
     * @param kelvinsPerWatt (hottest die - air) / package power over the last half; NaN when one of them is not known
     * @param airCelsius the air it was taken against; NaN when not known
     * @param timeConstantSeconds of the die's approach to its sustained temperature; NaN when the trace does not show one
     * @param asymptoteCelsius where the die was heading; NaN when the trace does not show it
     */
    public record Thermal(double kelvinsPerWatt, double airCelsius, double timeConstantSeconds, double asymptoteCelsius) {}

    /** Whether nothing moved any more in the last half. */
    public boolean isSteady() {
        return unsteady.isEmpty();
    }

    /** Sustained level of a channel; empty when it was not measured. */
    public Optional<Level> level(Channel channel) {
        return Optional.ofNullable(sustained.get(channel));
    }

    /** Sustained mean of a channel; empty when it was not measured. */
    public OptionalDouble mean(Channel channel) {
        Level level = sustained.get(channel);
        return level == null ? OptionalDouble.empty() : OptionalDouble.of(level.mean());
    }

    /** The power that was measured: of the package, else of the system. */
    public Channel powerChannel() {
        return sustained.containsKey(Channel.PACKAGE_POWER) ? Channel.PACKAGE_POWER : Channel.SYSTEM_POWER;
    }

    private static <V> Map<Channel, V> copy(Map<Channel, V> map) {
        Map<Channel, V> copy = new EnumMap<>(Channel.class);
        copy.putAll(map);
        return Collections.unmodifiableMap(copy);
    }
}
