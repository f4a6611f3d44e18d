package coldproof.physics;

import coldproof.quantity.Celsius;
import coldproof.quantity.Kelvins;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Cooling and warming of a body taken as one lump: {@code T(t) = S + (T0 - S) exp(-t / tau)} (Incropera, Fundamentals of heat and mass
 * transfer, ch. 5, from memory). Holds while the Biot number is below 0.1; a case with air gaps is not one lump, hence the wide interval of
 * {@link DeviceClass}.
 */
public final class LumpedBody {
    private LumpedBody() {}

    /**
     * Time constant {@code tau = m c / (h A)} in s.
     *
     * @param heatCapacity mass times specific heat, J/K, above 0
     * @param heatTransfer W/(m² K), above 0
     * @param squareMetres wetted surface, above 0
     */
    public static double timeConstantSeconds(double heatCapacity, double heatTransfer, double squareMetres) {
        return Bounds.positive("heat capacity", heatCapacity, "J/K") / (Bounds.positive("heat transfer", heatTransfer, "W/(m² K)")
                * Bounds.positive("surface", squareMetres, "m²"));
    }

    /** Temperature after a time in s, 0 or more. */
    public static Celsius temperature(Celsius start, Celsius surroundings, double seconds, double timeConstantSeconds) {
        Bounds.within("elapsed time", seconds, 0, Double.MAX_VALUE, "s");
        double shrunk = Math.exp(-seconds / Bounds.positive("time constant", timeConstantSeconds, "s"));
        return surroundings.plus(new Kelvins(start.above(surroundings).difference() * shrunk));
    }

    /**
     * Seconds until the body, on its way to its surroundings, reaches the target: {@code tau ln((T0 - S) / (target - S))}. Zero when it
     * starts at or beyond the target; empty when it never gets there, because the surroundings do not lie beyond the target.
     */
    public static OptionalDouble secondsToReach(Celsius target, Celsius start, Celsius surroundings, double timeConstantSeconds) {
        Bounds.positive("time constant", timeConstantSeconds, "s");
        double toGo = start.above(surroundings).difference();
        double left = target.above(surroundings).difference();
        boolean warming = toGo < 0;
        boolean alreadyThere = warming ? left <= toGo : left >= toGo;
        if (alreadyThere) {
            return OptionalDouble.of(0);
        }
        boolean reachable = warming ? left < 0 : left > 0;
        return reachable ? OptionalDouble.of(timeConstantSeconds * Math.log(toGo / left)) : OptionalDouble.empty();
    }

    /**
     * The wait in a room until a cold device reaches a target temperature, with the interval of the time constant. Empty when the room
     * never warms it that far: dry the room. For a time constant that was not measured the likely and the high wait are at least
     * {@link RewarmTime#SHORTEST_UNMEASURED_MINUTES}. {@link RewarmTime#NONE} when the device is there already.
     */
    public static Optional<RewarmTime> rewarm(Celsius target, Celsius device, Celsius room, TimeConstant tau) {
        if (device.compareTo(target) >= 0) {
            return room.compareTo(target) >= 0 ? Optional.of(RewarmTime.NONE) : Optional.empty();
        }
        OptionalDouble perSecondOfTau = secondsToReach(target, device, room, 1);
        if (perSecondOfTau.isEmpty()) {
            return Optional.empty();
        }
        double minutes = perSecondOfTau.getAsDouble() / 60;
        double floor = tau.measured() ? 0 : RewarmTime.SHORTEST_UNMEASURED_MINUTES;
        double low = minutes * tau.lowSeconds();
        double likely = Math.max(Math.max(floor, low), minutes * tau.likelySeconds());
        return Optional.of(new RewarmTime(low, likely, Math.max(likely, minutes * tau.highSeconds())));
    }
}
