package coldproof.reason.rehearse.bench;

/** One device with its temperatures, controllers, fan and battery, stepped through time. */
final class Device {
    static final double STEP_SECONDS = 0.1;
    private static final double IDLE_UTILISATION = 0.03;
    private static final double UTILISATION_SECONDS = 0.5; // how fast waiting shows
    private static final double CELL_KELVINS_PER_WATT = 0.2; // a working pack runs 3 to 15 K above its air (common practice)
    private final BenchParameters parameters;
    private final ClockTable table;
    private final HeatState heat;
    private final HeatNetwork network;
    private final ClockControl control;
    private double fanShare;
    private double cellCelsius;
    private double batteryJoules;
    private double utilisation = IDLE_UTILISATION;
    private double watts;
    private double megahertz;
    private double rateShare;
    private HeldBy holder = HeldBy.CLOCK;

    /** A device long idle in this air, its battery full. */
    Device(BenchParameters parameters, double pasteScale, double airCelsius) {
        this.parameters = parameters;
        network = parameters.heat().withPaste(pasteScale);
        table = new ClockTable(parameters.silicon());
        control = new ClockControl(parameters.limits(), table, network);
        heat = new HeatState(network, airCelsius);
        fanShare = parameters.fan().lowestRpm() / parameters.fan().highestRpm();
        cellCelsius = airCelsius;
        batteryJoules = parameters.supply().batteryWattHours() * 3600;
        settle(airCelsius);
    }

    /** Idle power and die temperature depend on each other through leakage: a few rounds bring both to rest. */
    private void settle(double airCelsius) {
        double load = IDLE_UTILISATION * parameters.workload().activity();
        for (int round = 0; round < 50; round++) {
            watts = table.watts(0, load, table.leakageWatts(heat.dieCelsius()));
            heat.settle(watts, fanShare, airCelsius);
        }
        control.settle(watts);
    }

    void idle(BenchCondition condition, double airCelsius) {
        utilisation = IDLE_UTILISATION;
        double load = utilisation * parameters.workload().activity();
        step(condition, airCelsius, 0, load);
        rateShare = 0;
    }

    /** Works for one step; {@code loopPhase} in [0, 1) says where in its loop the work is. */
    void work(BenchCondition condition, double airCelsius, double loopPhase) {
        Workload workload = parameters.workload();
        if (rateShare == 0) {
            utilisation = 1;
        }
        double activity = workload.activity() * (1 + workload.activitySwing() * Math.sin(2 * Math.PI * loopPhase));
        double load = activity * utilisation;
        Supply supply = parameters.supply();
        double left = (batteryJoules > 0 || condition.source() == Supply.Source.WALL
                ? supply.limitWatts(condition.source(), cellCelsius) : 0) - supply.restWatts() - fanWatts();
        double index = control.index(STEP_SECONDS, heat.dieCelsius(), load, table.leakageWatts(heat.dieCelsius()), left);
        holder = control.holder();
        step(condition, airCelsius, index, load);
        double unbounded = Math.pow(megahertz / parameters.silicon().highestMegahertz(), workload.rateExponent());
        double wanted = 1;
        rateShare = unbounded;
        if (unbounded > workload.rateCapShare()) {
            rateShare = workload.rateCapShare();
            holder = HeldBy.WORKLOAD;
            wanted = workload.bound() == Workload.Bound.WAITS ? workload.rateCapShare() / unbounded : 1;
        }
        utilisation += (wanted - utilisation) * -Math.expm1(-STEP_SECONDS / UTILISATION_SECONDS);
    }

    private void step(BenchCondition condition, double airCelsius, double index, double load) {
        double dieBefore = heat.dieCelsius();
        megahertz = table.megahertz(index);
        watts = table.watts(index, load, table.leakageWatts(dieBefore));
        heat.advance(STEP_SECONDS, watts, fanShare, airCelsius);
        control.took(STEP_SECONDS, watts, dieBefore);
        Fan fan = parameters.fan();
        fanShare += (fan.targetShare(condition.fan(), heat.dieCelsius()) - fanShare) * -Math.expm1(-STEP_SECONDS / fan.responseSeconds());
        boolean discharging = condition.source() == Supply.Source.BATTERY;
        double cellTarget = airCelsius + (discharging ? CELL_KELVINS_PER_WATT * systemWatts() : 0);
        cellCelsius += (cellTarget - cellCelsius) * -Math.expm1(-STEP_SECONDS / parameters.supply().cellSeconds());
        if (discharging) {
            batteryJoules = Math.max(0, batteryJoules - systemWatts() * STEP_SECONDS);
        }
    }

    private double fanWatts() {
        return parameters.fan().wattsAtHighest() * fanShare * fanShare * fanShare;
    }

    double systemWatts() {
        return watts + parameters.supply().restWatts() + fanWatts();
    }

    double packageWatts() {
        return watts;
    }

    double averagePackageWatts() {
        return control.averageWatts();
    }

    double megahertz() {
        return megahertz;
    }

    double dieCelsius() {
        return heat.dieCelsius();
    }

    double fanRpm() {
        return fanShare * parameters.fan().highestRpm();
    }

    double utilisation() {
        return utilisation;
    }

    double cellCelsius() {
        return cellCelsius;
    }

    /** Charge as a share of the full battery; NaN without one. */
    double batteryShare() {
        return parameters.supply().hasBattery() ? batteryJoules / (parameters.supply().batteryWattHours() * 3600) : Double.NaN;
    }

    /** Rate as a share of that at the highest clock; 0 when idle. */
    double rateShare() {
        return rateShare;
    }

    HeldBy holder() {
        return holder;
    }

    HeatState heat() {
        return heat;
    }

    double resistanceKelvinsPerWatt(double rpm, double airCelsius) {
        return network.resistanceKelvinsPerWatt(rpm / parameters.fan().highestRpm(), airCelsius);
    }
}
