package coldproof.reason.rehearse.bench;

import coldproof.quantity.LogRatio;
import coldproof.stats.interval.Moments;

/**
 * One sitting at the simulated bench. Heat, battery and the average of the power limit carry over from trial to trial. Not safe for several
 * threads.
 */
public final class BenchSession {
    private static final int STEPS_PER_AIR = (int) Math.round(1 / Device.STEP_SECONDS); // the air moves once a second
    private final BenchParameters parameters;
    private final BenchCondition opened;
    private final ScoreScatter scatter;
    private final NormalDraws loops;
    private final NormalDraws sensors;
    private final AirPath air;
    private final Device device;
    private long steps;

    BenchSession(BenchParameters parameters, BenchCondition condition, ScoreScatter scatter, NormalDraws weather, NormalDraws loops,
            NormalDraws sensors) {
        this.parameters = parameters;
        this.opened = condition;
        this.scatter = scatter;
        this.loops = loops;
        this.sensors = sensors;
        air = new AirPath(parameters.weather(), condition.outdoors(), weather);
        device = new Device(parameters, condition.pasteScale(), condition.airCelsius() + air.strayKelvins(0));
    }

    /** How long the session has lasted, s. */
    public double elapsedSeconds() {
        return steps * Device.STEP_SECONDS;
    }

    /** Lets the device stand idle, as between two trials. */
    public void rest(BenchCondition condition, double seconds) {
        Ranges.atLeast("seconds", seconds, 0);
        check(condition);
        for (int i = steps(seconds); i > 0; i--) {
            device.idle(condition, nextAir(condition));
        }
    }

    /**
     * Runs one trial.
     *
     * @throws IllegalArgumentException if the condition needs other paste than the session was opened with, which takes a new session, or
     *     a battery the device does not have
     */
    public BenchTrial run(BenchCondition condition) {
        check(condition);
        Workload workload = parameters.workload();
        int workSteps = steps(workload.workSeconds());
        double scatterLog = scatter.nextLog();
        Telemetry telemetry = new Telemetry(parameters.sensors(), workload.leadSeconds() + workload.workSeconds() + workload.tailSeconds(),
                workload.leadSeconds(), workload.workSeconds(), sensors);
        telemetry.begin(device, condition.airCelsius() + air.strayKelvins(elapsedSeconds()));
        logIdle(condition, workload.leadSeconds(), telemetry);
        TruthKeeper keeper = new TruthKeeper(workSteps);
        double[] loopSums = new double[workload.loops()];
        int[] loopSteps = new int[workload.loops()];
        for (int i = 0; i < workSteps; i++) {
            double along = (double) i * workload.loops() / workSteps;
            int loop = (int) along;
            double airCelsius = nextAir(condition);
            device.work(condition, airCelsius, along - loop);
            keeper.step(device, airCelsius);
            telemetry.step(device, airCelsius);
            loopSums[loop] += device.rateShare() * scatter.leftAt(i * Device.STEP_SECONDS);
            loopSteps[loop]++;
        }
        logIdle(condition, workload.tailSeconds(), telemetry);
        double[] rates = loopRates(loopSums, loopSteps, scatterLog);
        return new BenchTrial(condition, Moments.of(rates).mean(), rates, workload.leadSeconds(), workload.workSeconds(), scatter.isDisturbed(),
                telemetry.trace(), keeper.truth(parameters, device));
    }

    private void check(BenchCondition condition) {
        if (condition.source() == Supply.Source.BATTERY && !parameters.supply().hasBattery()) {
            throw new IllegalArgumentException("the " + parameters.name() + " has no battery to run on");
        }
        if (condition.pasteScale() != opened.pasteScale()) {
            throw new IllegalArgumentException("pasteScale " + condition.pasteScale() + " differs from the session's "
                    + opened.pasteScale());
        }
    }

    private void logIdle(BenchCondition condition, double seconds, Telemetry telemetry) {
        for (int i = steps(seconds); i > 0; i--) {
            double airCelsius = nextAir(condition);
            device.idle(condition, airCelsius);
            telemetry.step(device, airCelsius);
        }
    }

    private double nextAir(BenchCondition condition) {
        if (steps % STEPS_PER_AIR == 0) {
            air.advance(1);
        }
        steps++;
        return condition.airCelsius() + air.strayKelvins(elapsedSeconds());
    }

    /** Scatter from loop to loop is autocorrelated and centred, so that the mean of the loops is the trial's score. */
    private double[] loopRates(double[] sums, int[] counts, double scatterLog) {
        ScoreSpread spread = parameters.spread();
        double sd = LogRatio.logSdOfCv(spread.loopCvPercent());
        double scale = parameters.workload().rateAtHighest() * Math.exp(scatterLog);
        double[] rates = new double[sums.length];
        double before = 0;
        double after = 0;
        double state = sd > 0 ? loops.next() : 0;
        double innovation = Math.sqrt(1 - spread.loopAutocorrelation() * spread.loopAutocorrelation());
        for (int i = 0; i < rates.length; i++) {
            double calm = scale * sums[i] / counts[i];
            rates[i] = sd > 0 ? calm * Math.exp(sd * state) : calm;
            before += calm;
            after += rates[i];
            state = sd > 0 ? spread.loopAutocorrelation() * state + innovation * loops.next() : 0;
        }
        for (int i = 0; i < rates.length; i++) {
            rates[i] *= before / after;
        }
        return rates;
    }

    private static int steps(double seconds) {
        return (int) Math.round(seconds / Device.STEP_SECONDS);
    }
}
