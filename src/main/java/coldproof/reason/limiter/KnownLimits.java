package coldproof.reason.limiter;

import java.util.OptionalDouble;

/**
 * Limits the maker states; each may be missing.
 *
 * @param dieCelsius temperature the die will not exceed, °C
 * @param packageWatts long-term limit of package power, W
 * @param clockMegahertz highest clock, MHz
 */
public record KnownLimits(OptionalDouble dieCelsius, OptionalDouble packageWatts, OptionalDouble clockMegahertz) {
    /** Nothing is known. */
    public static final KnownLimits NONE = new KnownLimits(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
}
