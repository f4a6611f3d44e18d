package coldproof.reason.limiter;

import coldproof.quantity.Interval;
import coldproof.stats.distribution.StudentT;
import coldproof.stats.interval.Moments;
import coldproof.stats.series.StraightLine;
import coldproof.trace.Blocks;
import coldproof.trace.Channel;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * How the rate follows the clock, or power where no clock was measured: change of log rate per change of log clock, 1 when it follows in full, 0 when it does not. Taken inside
 * trials from their loops where the clock falls after a boost, and between conditions from their scores.
 *
 * @param driver what the rate is held against
 * @param slope the estimate
 * @param error its standard error
 * @param degreesOfFreedom of that error
 */
record Elasticity(Driver driver, double slope, double error, double degreesOfFreedom) {
    private static final double LEVEL = 0.95;
    private static final int FEWEST_LOOPS = 4;
    private static final double MANY = 200; // degrees of freedom: as good as normal

    /** What drives the rate. Slopes and their spreads for work that the processor limits, and for work that waits for something else. */
    enum Driver {
        /** A little of the rate is lost to memory; common practice. */
        CLOCK("clock", Quantity.CLOCK, 0.02, 0.85, 0.15, 0.05, 0.08),
        /** Power goes as the clock to the power of two to three, from P = C V² f; small changes of it may come from leakage alone. */
        POWER("power", Quantity.POWER, 0.12, 0.42, 0.15, 0.02, 0.05);

        private final String word;
        private final Quantity quantity;
        private final double leastChange; // log; smaller changes tell nothing about the slope
        private final double following;
        private final double followingSpread;
        private final double waiting;
        private final double waitingSpread;

        Driver(String word, Quantity quantity, double leastChange, double following, double followingSpread, double waiting, double waitingSpread) {
            this.word = word;
            this.quantity = quantity;
            this.leastChange = leastChange;
            this.following = following;
            this.followingSpread = followingSpread;
            this.waiting = waiting;
            this.waitingSpread = waitingSpread;
        }

        String word() {
            return word;
        }

        private Channel channel(LimiterTrial trial) {
            return this == CLOCK ? Channel.CLOCK : trial.trace().powerChannel();
        }
    }

    /** The most precise of the slopes that the trials and the changes give; empty where the clock, or power in its place, hardly changes, or there is no score. */
    static Optional<Elasticity> of(List<LimiterTrial> trials, List<Change> changes) {
        boolean clocks = trials.stream().anyMatch(trial -> trial.trace().level(Channel.CLOCK).isPresent());
        Driver driver = clocks ? Driver.CLOCK : Driver.POWER;
        List<Elasticity> found = new ArrayList<>();
        inside(driver, trials).ifPresent(found::add);
        for (Change change : changes) {
            between(driver, Quantity.PERFORMANCE.between(change.from(), change.to()), driver.quantity.between(change.from(), change.to())).ifPresent(found::add);
        }
        return found.stream().min(Comparator.comparingDouble(one -> one.error() * StudentT.upperPoint((1 - LEVEL) / 2, one.degreesOfFreedom())));
    }

    /** 95 % interval of the slope. */
    Interval interval() {
        double half = error * StudentT.upperPoint((1 - LEVEL) / 2, degreesOfFreedom);
        return new Interval(LEVEL, slope - half, slope + half);
    }

    /** How likely the estimate is for work that follows the clock, up to a factor shared with {@link #whenNotFollowing}. */
    double whenFollowing() {
        return likelihood(driver.following, driver.followingSpread);
    }

    /** How likely it is for work that does not. */
    double whenNotFollowing() {
        return likelihood(driver.waiting, driver.waitingSpread);
    }

    private double likelihood(double center, double spread) {
        double scale = Math.hypot(error, spread);
        double df = Math.min(MANY, degreesOfFreedom * Math.pow(scale / error, 4)); // the known spread has no degrees to lose: Satterthwaite (from memory)
        return StudentT.density((slope - center) / scale, df) / scale;
    }

    private static Optional<Elasticity> inside(Driver driver, List<LimiterTrial> trials) {
        List<StraightLine> slopes = trials.stream().map(trial -> line(driver, trial)).flatMap(Optional::stream).toList();
        if (slopes.isEmpty()) {
            return Optional.empty();
        }
        if (slopes.size() == 1) {
            return Optional.of(new Elasticity(driver, slopes.get(0).slope(), 2 * slopes.get(0).slopeError(), FEWEST_LOOPS)); // neighbouring loops resemble each other: twice the error
        }
        Moments all = Moments.of(slopes.stream().mapToDouble(StraightLine::slope).toArray());
        return Optional.of(new Elasticity(driver, all.mean(), all.standardError(), all.count() - 1));
    }

    /** Log rate over log clock or power, loop by loop; empty where there are too few loops, or clock or power hardly changes. */
    private static Optional<StraightLine> line(Driver driver, LimiterTrial trial) {
        double[] rates = trial.loops().rates();
        double[] ends = trial.loops().endShares();
        Blocks blocks = trial.trace().blocks();
        double length = trial.trace().work().lengthSeconds();
        double[] x = new double[rates.length];
        double[] y = new double[rates.length];
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < rates.length; i++) {
            x[i] = Math.log(blocks.mean(driver.channel(trial), (i == 0 ? 0 : ends[i - 1]) * length, ends[i] * length));
            y[i] = Math.log(rates[i]);
            if (!Double.isFinite(x[i]) || !Double.isFinite(y[i])) {
                return Optional.empty();
            }
            low = Math.min(low, x[i]);
            high = Math.max(high, x[i]);
        }
        return rates.length < FEWEST_LOOPS || high - low < 2 * driver.leastChange ? Optional.empty() : Optional.of(StraightLine.of(x, y));
    }

    /** The slope between two conditions; empty where clock or power was not measured, hardly changes, or the score's change has no interval. */
    private static Optional<Elasticity> between(Driver driver, Effect score, Effect change) {
        boolean tells = Math.abs(change.estimate()) >= driver.leastChange && score.degreesOfFreedom() > 0;
        return tells ? Optional.of(new Elasticity(driver, score.estimate() / change.estimate(), score.error() / Math.abs(change.estimate()), score.degreesOfFreedom()))
                : Optional.empty();
    }
}
