package coldproof.machine.library;

import coldproof.machine.sensors.SystemLibrary;
import java.util.List;
import java.util.logging.Level;
import java.util.logging.Logger;
import oshi.SystemInfo;
import oshi.hardware.HardwareAbstractionLayer;
import oshi.hardware.PowerSource;

/** Asks the library, and changes nothing of its answers. */
public final class OshiLibrary implements SystemLibrary {
    private static final String NATIVE_PART = "com.sun.jna";
    private static final long FRESH_NANOS = 300_000_000; // as long as the library keeps its other answers

    private final HardwareAbstractionLayer hardware;
    private final Logger quiet;
    private List<Battery> batteries;
    private long batteriesNanos;

    /**
     * Opens the library, which may unpack a native part of it into a temporary folder.
     *
     * @throws LinkageError if that part cannot be unpacked or loaded
     */
    public OshiLibrary() {
        quiet = Logger.getLogger(NATIVE_PART); // kept: a logger nobody holds is made anew, and loud again
        quiet.setLevel(Level.OFF); // what goes wrong is thrown as well, and told once
        hardware = new SystemInfo().getHardware();
        hardware.getProcessor();
    }

    @Override
    public double dieCelsius() {
        return hardware.getSensors().getCpuTemperature();
    }

    @Override
    public int[] fanRpm() {
        return hardware.getSensors().getFanSpeeds();
    }

    @Override
    public long[] clockHertz() {
        return hardware.getProcessor().getCurrentFreq();
    }

    @Override
    public long[] loadTicks() {
        return hardware.getProcessor().getSystemCpuLoadTicks();
    }

    /** Asked of the system once for the several sensors of one row; the library itself keeps no such answer. */
    @Override
    public synchronized List<Battery> batteries() {
        long now = System.nanoTime();
        if (batteries == null || now - batteriesNanos > FRESH_NANOS) {
            batteries = hardware.getPowerSources().stream().map(OshiLibrary::battery).toList();
            batteriesNanos = now;
        }
        return batteries;
    }

    private static Battery battery(PowerSource source) {
        return new Battery(source.getName(), source.getRemainingCapacityPercent(), source.getPowerUsageRate(),
                source.getCapacityUnits() == PowerSource.CapacityUnits.RELATIVE, source.getTemperature(), source.getMaxCapacity(), source.isPowerOnLine(),
                source.isCharging(), source.isDischarging());
    }
}
