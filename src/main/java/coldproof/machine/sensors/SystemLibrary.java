package coldproof.machine.sensors;

import java.util.List;

/**
 * What a library of system information answers, as it answers it: an absent sensor may be 0, NaN, negative or an empty array, and any call may
 * throw. {@link LibrarySensors} judges what of it can be true.
 */
public interface SystemLibrary {
    /** Temperature of the processor, °C; 0 or NaN where there is none. */
    double dieCelsius();

    /** Speed of each fan, rpm; empty, or 0 for a fan that cannot be read. */
    int[] fanRpm();

    /** Clock of each processor, Hz; 0 or less where it is not known. */
    long[] clockHertz();

    /** Time spent so far as user, nice, system, idle, waiting, interrupts, soft interrupts and steal, ms. */
    long[] loadTicks();

    /** The batteries; some systems show one that is not there. */
    List<Battery> batteries();

    /**
     * A battery.
     *
     * @param name as the system calls it
     * @param chargeShare 0 to 1
     * @param milliwatts into it, or out of it where negative
     * @param relative whether the system gives its capacity, and then its power too, in units of its own
     * @param celsius of its cells; 0 where it is not known
     * @param fullCapacity in any unit; 1 or less where there is no battery
     * @param plugged whether the device is on another source
     * @param charging whether it is being charged
     * @param discharging whether it is being discharged
     */
    record Battery(String name, double chargeShare, double milliwatts, boolean relative, double celsius, long fullCapacity, boolean plugged, boolean charging,
            boolean discharging) {}
}
