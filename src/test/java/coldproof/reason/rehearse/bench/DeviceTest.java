package coldproof.reason.rehearse.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Controllers against their promises and against closed forms. */
class DeviceTest {
    private static final BenchCondition ROOM = BenchCondition.room(21);
    private static final BenchCondition FROST = BenchCondition.outdoors(-9);

    static List<BenchParameters> devices() {
        return InventedDevices.all();
    }

    private static Device worked(BenchParameters parameters, BenchCondition condition, double seconds, Consumer<Device> afterEachStep) {
        Device device = new Device(parameters, 1, condition.airCelsius());
        for (int i = 0; i < seconds / Device.STEP_SECONDS; i++) {
            device.work(condition, condition.airCelsius(), i * 0.0005 % 1);
            afterEachStep.accept(device);
        }
        return device;
    }

    @ParameterizedTest
    @MethodSource("devices")
    void noLimitIsEverPassed(BenchParameters parameters) {
        ControlLimits limits = parameters.limits();
        for (BenchCondition condition : List.of(ROOM, FROST, ROOM.with(Fan.Setting.MAXIMUM), FROST.with(Fan.Setting.MAXIMUM))) {
            worked(parameters, condition, 600, device -> {
                assertTrue(device.megahertz() <= limits.clockCeilingMegahertz());
                assertTrue(device.packageWatts() <= limits.shortTermWatts() + 1e-9);
                assertTrue(device.averagePackageWatts() <= limits.longTermWatts() + 1e-9);
                // a held die stays within 1 to 2 K (common practice)
                assertTrue(device.dieCelsius() <= limits.temperatureCelsius() + 2, "die at " + device.dieCelsius());
            });
        }
    }

    @Test
    void supplyLimitHoldsTheWholeSystem() {
        BenchParameters tablet = InventedDevices.ferryTablet();
        worked(tablet, ROOM, 300, device -> assertTrue(device.systemWatts() <= tablet.supply().wallWatts() + 0.1,
                "system takes " + device.systemWatts())); // the fan is that of the step before
    }

    @ParameterizedTest
    @MethodSource("devices")
    void energyIsConservedThroughControllersAndFan(BenchParameters parameters) {
        Device device = new Device(parameters, 1, 21);
        double before = device.heat().joulesStored();
        double in = 0;
        for (int i = 0; i < 5000; i++) {
            device.work(ROOM, 21, 0);
            in += device.packageWatts() * Device.STEP_SECONDS;
        }
        assertEquals(in, device.heat().joulesStored() - before + device.heat().joulesToAir(), 1e-9 * in);
    }

    /**
     * The average obeys A' = (P - A) / tau. With P at the short-term limit it reaches the place where P must fall,
     * long - (short - long)/20, after tau ln((short - A0) / (1.05 (short - long))).
     */
    @Test
    void boostLastsAsLongAsTheExponentialAverageAllows() {
        BenchParameters desktop = unheated(InventedDevices.shelfDesktop().withoutChance());
        ControlLimits limits = desktop.limits();
        Device device = new Device(desktop, 1, 21);
        double idleWatts = device.packageWatts();
        double excess = limits.shortTermWatts() - limits.longTermWatts();
        double byHand = limits.averagingSeconds()
                * Math.log((limits.shortTermWatts() - idleWatts) / (excess * (1 + 1 / ClockControl.AVERAGE_GAIN)));
        int steps = 0;
        do {
            device.work(ROOM, 21, 0);
            steps++;
        } while (device.packageWatts() >= limits.shortTermWatts() - 1e-6);
        assertEquals(byHand, (steps - 1) * Device.STEP_SECONDS, Device.STEP_SECONDS + 1e-9);
    }

    @Test
    void longTermLimitIsReachedAndKept() {
        Device device = worked(InventedDevices.shelfDesktop(), ROOM, 300, ignored -> { });
        double limit = InventedDevices.shelfDesktop().limits().longTermWatts();
        assertEquals(limit, device.averagePackageWatts(), 1e-3 * limit); // the swing of the activity is met by the clock
        assertEquals(limit, device.packageWatts(), 1e-3 * limit);
    }

    /**
     * Thermal limit active: P = (limit - air) / R. Limit 95 °C, air 22 to -5 °C: power ratio 100/73 = 1.370; clock gain 17.0 % where
     * power goes with the square of the clock, 11.1 % where it goes with the cube.
     */
    @Test
    void heatLimitedPowerAndClockFollowTheTextbookRatio() {
        assertEquals(1.370, heatLimited(0.5, -5).packageWatts() / heatLimited(0.5, 22).packageWatts(), 0.0005 + 1e-4);
        assertEquals(1.170, heatLimited(0.5, -5).megahertz() / heatLimited(0.5, 22).megahertz(), 0.0005 + 1e-4);
        assertEquals(1.111, heatLimited(1, -5).megahertz() / heatLimited(1, 22).megahertz(), 0.0005 + 1e-4);
        // half of the last printed digit, and 1e-4 for what is left of the approach and of the steps of the clock
    }

    private static Device heatLimited(double voltageExponent, double airCelsius) {
        double none = Double.POSITIVE_INFINITY;
        BenchParameters device = new BenchParameters("nothing but heat",
                new HeatNetwork(4, 40, 0, 0.6, 1.0, 0, 0.7, 0, 0, 0),
                new Silicon(500, 5000, 5, 0, 150, 0, 0, 0, voltageExponent),
                new ControlLimits(95, ControlLimits.HeatControl.SETPOINT, none, none, 10, none),
                new Fan(1000, 5000, 1, 50, 90, 4, 0), new Supply(none, none, 0, 0, 1000, 0),
                new Workload(600, 1, 0, 0, 100, 1, 1, Workload.Bound.WAITS, 1, 0), ScoreSpread.NONE, Weather.STILL, Sensors.PERFECT);
        Device held = worked(device, BenchCondition.room(airCelsius), 2000, ignored -> { });
        assertEquals(95, held.dieCelsius(), 0.01);
        return held;
    }

    @Test
    void aTripPointMakesASawtoothInsideItsBand() {
        ControlLimits base = InventedDevices.trailLaptop().limits();
        BenchParameters tripping = InventedDevices.trailLaptop().with(new ControlLimits(95, ControlLimits.HeatControl.TRIP,
                base.longTermWatts(), base.shortTermWatts(), base.averagingSeconds(), base.clockCeilingMegahertz()));
        double[] ends = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
        int[] steps = new int[1];
        worked(tripping, ROOM, 900, device -> {
            if (++steps[0] > 6000) {
                ends[0] = Math.min(ends[0], device.dieCelsius());
                ends[1] = Math.max(ends[1], device.dieCelsius());
            }
        });
        assertTrue(ends[1] > 95 && ends[1] < 97, "top " + ends[1]);
        assertTrue(ends[0] < 91 && ends[0] > 83, "bottom " + ends[0]); // the 4 K band is crossed; the lag of the sink may add it twice more
    }

    @Test
    void aColdCellGivesLess() {
        Supply supply = new Supply(100, 50, 0.01, 60, 1000, 5);
        assertEquals(50, supply.limitWatts(Supply.Source.BATTERY, 25), 0);
        assertEquals(40, supply.limitWatts(Supply.Source.BATTERY, 0), 1e-12);
        assertEquals(100, supply.limitWatts(Supply.Source.WALL, -20), 0);
    }

    @Test
    void theBatteryLosesWhatTheSystemTakes() {
        BenchParameters laptop = InventedDevices.trailLaptop();
        BenchCondition unplugged = ROOM.with(Supply.Source.BATTERY);
        double[] joules = new double[1];
        Device device = worked(laptop, unplugged, 300, each -> joules[0] += each.systemWatts() * Device.STEP_SECONDS);
        assertEquals(1 - joules[0] / (laptop.supply().batteryWattHours() * 3600), device.batteryShare(), 1e-4); // fan power of one step
    }

    private static BenchParameters unheated(BenchParameters device) {
        ControlLimits limits = device.limits();
        return device.with(new ControlLimits(150, limits.heatControl(), limits.longTermWatts(), limits.shortTermWatts(),
                limits.averagingSeconds(), limits.clockCeilingMegahertz()));
    }
}
