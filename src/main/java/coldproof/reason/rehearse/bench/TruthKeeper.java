package coldproof.reason.rehearse.bench;

/** Gathers what is true of a trial while it runs. */
final class TruthKeeper {
    private static final double BOOST_FROM_SECONDS = 2;
    private static final double BOOST_TO_SECONDS = 6;
    private static final double BOOST_WINDOW_SECONDS = 5;
    private static final double BOOST_LEAST = 0.08; // less than 8 % above the sustained level is no boost
    private final double[] watts;
    private final long[] held = new long[HeldBy.values().length];
    private int steps;
    private double rateSum;
    private double wattsSum;
    private double megahertzSum;
    private double dieSum;
    private double fanSum;
    private double airSum;

    TruthKeeper(int workSteps) {
        watts = new double[workSteps];
    }

    void step(Device device, double airCelsius) {
        watts[steps] = device.packageWatts();
        rateSum += device.rateShare();
        if (steps >= watts.length / 2) {
            held[device.holder().ordinal()]++;
            wattsSum += device.packageWatts();
            megahertzSum += device.megahertz();
            dieSum += device.dieCelsius();
            fanSum += device.fanRpm();
            airSum += airCelsius;
        }
        steps++;
    }

    BenchTruth truth(BenchParameters parameters, Device device) {
        double last = watts.length - watts.length / 2;
        double[] shares = new double[held.length];
        for (int i = 0; i < held.length; i++) {
            shares[i] = held[i] / last;
        }
        double sustained = wattsSum / last;
        return new BenchTruth(parameters.workload().rateAtHighest() * rateSum / watts.length, shares, boostSeconds(sustained), sustained,
                megahertzSum / last, dieSum / last, fanSum / last, airSum / last,
                device.resistanceKelvinsPerWatt(fanSum / last, airSum / last));
    }

    private double boostSeconds(double sustainedWatts) {
        double high = mean(stepOf(BOOST_FROM_SECONDS), stepOf(BOOST_TO_SECONDS));
        if (high - sustainedWatts < BOOST_LEAST * sustainedWatts) {
            return 0;
        }
        double halfWay = (high + sustainedWatts) / 2;
        int window = stepOf(BOOST_WINDOW_SECONDS);
        double sum = mean(0, window) * window;
        for (int from = 0; from + window < watts.length; from++) {
            if (sum / window < halfWay) {
                return (from + window / 2.0) * Device.STEP_SECONDS; // the middle of the window
            }
            sum += watts[from + window] - watts[from];
        }
        return watts.length * Device.STEP_SECONDS;
    }

    private double mean(int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += watts[i];
        }
        return sum / (to - from);
    }

    private static int stepOf(double seconds) {
        return (int) Math.round(seconds / Device.STEP_SECONDS);
    }
}
