package coldproof.plan;

import java.util.OptionalDouble;

/**
 * When to stop at once.
 *
 * @param dieAboveCelsius die temperature, °C
 * @param batteryBelowPercent charge
 * @param cellBelowCelsiusWhileCharging temperature of the cell while it is being charged, °C
 */
public record AbortLimits(OptionalDouble dieAboveCelsius, OptionalDouble batteryBelowPercent, OptionalDouble cellBelowCelsiusWhileCharging) {
    /** No limits beyond the safety rules. */
    public static final AbortLimits NONE = new AbortLimits(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
}
