package coldproof.plan;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What must hold when a trial starts.
 *
 * @param dieWithinKelvins how far the die may be from where it was at the first trial of its session, K
 * @param batteryAtLeastPercent least charge
 * @param powerSource "wall" or "battery"
 */
public record StartConditions(OptionalDouble dieWithinKelvins, OptionalDouble batteryAtLeastPercent, Optional<String> powerSource) {
    /** Nothing is asked. */
    public static final StartConditions NONE = new StartConditions(OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty());

    /** Whether anything is asked. */
    public boolean any() {
        return dieWithinKelvins.isPresent() || batteryAtLeastPercent.isPresent() || powerSource.isPresent();
    }
}
