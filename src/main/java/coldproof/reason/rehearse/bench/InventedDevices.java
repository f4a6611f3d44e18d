package coldproof.reason.rehearse.bench;

import java.util.List;

/**
 * Ready devices, all invented: no real machine has these figures. Each is built to be held back in a known way; the names say which.
 */
public final class InventedDevices {
    private static final double NONE = Double.POSITIVE_INFINITY;
    private static final ScoreSpread USUAL = new ScoreSpread(1.0, 0.6, 0, 0.3, 0.3, 0.5, 0.5, 0.4, 0.02);
    private static final Weather WINTER = new Weather(1.2, 0.8, 0.4, 600, 0.2);
    private static final Sensors ORDINARY = new Sensors(1, 0.004, 1.2, 0.25, 1, 0, 0.05, 12, 0.1, 8, 0.002, 0);

    private InventedDevices() {
    }

    /** Thin laptop: held by heat in a room, by its long-term power limit in frost. */
    public static BenchParameters trailLaptop() {
        return new BenchParameters("trail laptop",
                new HeatNetwork(4.2, 40, 420, 0.62, 0.14, 0.66, 0.72, 0.6, 0.05, 0.9),
                new Silicon(600, 4200, 25, 2.4, 44, 9, 0.014, 0.55, 0.75),
                new ControlLimits(95, ControlLimits.HeatControl.SETPOINT, 36, 55, 14, NONE),
                new Fan(900, 5400, 0.545, 45, 88, 4, 2.2),
                new Supply(90, 60, 0.004, 58, 2400, 7.5),
                new Workload(240, 8, 10, 5, 62, 0.95, 1, Workload.Bound.WAITS, 1, 0.03),
                USUAL, WINTER, ORDINARY);
    }

    /** Performance laptop: heat with the fan on its curve, power once the fan is pinned to maximum or the air is cold. */
    public static BenchParameters workshopLaptop() {
        return new BenchParameters("workshop laptop",
                new HeatNetwork(9, 110, 900, 0.3, 0.2, 1.6, 0.7, 0.55, 0.08, 1.4),
                new Silicon(800, 4800, 50, 5, 112, 20, 0.015, 0.5, 0.8),
                new ControlLimits(97, ControlLimits.HeatControl.SETPOINT, 80, 120, 24, NONE),
                new Fan(1400, 5200, 0.58, 50, 90, 5, 6),
                new Supply(230, 95, 0.005, 88, 3000, 14),
                new Workload(300, 10, 10, 5, 128, 0.93, 1, Workload.Bound.WAITS, 1, 0.02),
                USUAL, WINTER, ORDINARY);
    }

    /** Small desktop: held by its power limit in any air; cold gains a little through lower leakage. */
    public static BenchParameters shelfDesktop() {
        return new BenchParameters("shelf desktop",
                new HeatNetwork(8, 150, 0, 0.28, 0.3, 1.5, 0.7, 0.6, 0, 0),
                new Silicon(800, 4600, 50, 4, 82, 13, 0.016, 0.5, 0.8),
                new ControlLimits(95, ControlLimits.HeatControl.SETPOINT, 65, 88, 28, NONE),
                new Fan(700, 2600, 0.9, 45, 85, 5, 3),
                new Supply(180, NONE, 0, 0, 3600, 12),
                new Workload(300, 10, 10, 5, 96, 0.94, 1, Workload.Bound.WAITS, 1, 0.02),
                USUAL, WINTER, ORDINARY);
    }

    /** Board machine with a fixed highest clock: nothing colder can help. */
    public static BenchParameters steadyBox() {
        return new BenchParameters("steady box",
                new HeatNetwork(5, 180, 0, 0.5, 0.35, 0.9, 0.7, 0.6, 0, 0),
                new Silicon(600, 3600, 50, 3, 40, 6, 0.014, 0.6, 0.7),
                new ControlLimits(100, ControlLimits.HeatControl.SETPOINT, 45, 60, 28, 2800),
                new Fan(800, 3000, 0.9, 40, 80, 5, 1.5),
                new Supply(100, NONE, 0, 0, 3600, 6),
                new Workload(240, 8, 10, 5, 50, 0.97, 1, Workload.Bound.WAITS, 1, 0.02),
                USUAL, WINTER, ORDINARY);
    }

    /** Machine whose work waits for its store: the processor is not the bottleneck. */
    public static BenchParameters waitingStation() {
        return new BenchParameters("waiting station",
                new HeatNetwork(5, 120, 0, 0.45, 0.3, 1.0, 0.7, 0.6, 0, 0),
                new Silicon(600, 4000, 50, 3, 46, 7, 0.014, 0.55, 0.75),
                new ControlLimits(95, ControlLimits.HeatControl.SETPOINT, 45, 60, 28, NONE),
                new Fan(800, 3600, 0.9, 45, 85, 5, 1.5),
                new Supply(100, 60, 0.004, 50, 2400, 7),
                new Workload(240, 8, 10, 5, 210, 0.9, 0.7, Workload.Bound.WAITS, 1, 0.02),
                USUAL, WINTER, ORDINARY);
    }

    /** Tablet on a weak adapter and a battery that hates the cold: held by its supply. */
    public static BenchParameters ferryTablet() {
        return new BenchParameters("ferry tablet",
                new HeatNetwork(3.6, 75, 300, 0.7, 0.22, 0.75, 0.7, 0.6, 0.05, 0.8),
                new Silicon(600, 3800, 25, 1.8, 34, 5, 0.014, 0.55, 0.75),
                new ControlLimits(95, ControlLimits.HeatControl.SETPOINT, 32, 42, 28, NONE),
                new Fan(900, 4800, 0.9, 45, 85, 4, 1.2),
                new Supply(27, 26, 0.008, 40, 1800, 5.5),
                new Workload(240, 8, 10, 5, 44, 0.95, 1, Workload.Bound.WAITS, 1, 0.02),
                USUAL, WINTER, ORDINARY);
    }

    /** All of them. */
    public static List<BenchParameters> all() {
        return List.of(trailLaptop(), workshopLaptop(), shelfDesktop(), steadyBox(), waitingStation(), ferryTablet());
    }
}
