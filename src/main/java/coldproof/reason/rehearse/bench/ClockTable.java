package coldproof.reason.rehearse.bench;

/**
 * The clocks of a device and what each costs. A clock between two steps is time spent on both, so that power is linear in between and
 * any power can be met exactly.
 */
final class ClockTable {
    private final Silicon silicon;
    private final double[] relativeDynamic;
    private final double[] relativeLeakage;
    private final double topIndex;

    ClockTable(Silicon silicon) {
        this.silicon = silicon;
        int steps = (int) Math.ceil((silicon.highestMegahertz() - silicon.lowestMegahertz()) / silicon.stepMegahertz() - 1e-9);
        relativeDynamic = new double[steps + 1];
        relativeLeakage = new double[steps + 1];
        for (int i = 0; i <= steps; i++) {
            double clock = megahertz(i) / silicon.highestMegahertz();
            double voltage = Math.max(silicon.voltageFloor(), Math.pow(clock, silicon.voltageExponent()));
            relativeLeakage[i] = voltage * voltage;
            relativeDynamic[i] = voltage * voltage * clock;
        }
        topIndex = steps;
    }

    double topIndex() {
        return topIndex;
    }

    double megahertz(double index) {
        return Math.min(silicon.highestMegahertz(), silicon.lowestMegahertz() + index * silicon.stepMegahertz());
    }

    /** The index of a clock, cut to what the device can do. */
    double indexOf(double megahertz) {
        return Math.max(0, Math.min(topIndex, (megahertz - silicon.lowestMegahertz()) / silicon.stepMegahertz()));
    }

    /** Leakage at the highest voltage, W. */
    double leakageWatts(double dieCelsius) {
        return silicon.leakageWatts() * Math.exp(silicon.leakagePerKelvin() * (dieCelsius - Silicon.LEAKAGE_REFERENCE_CELSIUS));
    }

    /** Package power, W, for a load of activity times utilisation and the leakage at the highest voltage. */
    double watts(double index, double load, double leakageWatts) {
        int below = (int) Math.min(index, topIndex - 1);
        double between = index - below;
        double low = atStep(below, load, leakageWatts);
        return low + between * (atStep(below + 1, load, leakageWatts) - low);
    }

    /** The highest clock, as an index, whose package power does not exceed the budget; 0 when even the lowest does. */
    double indexWithin(double budgetWatts, double load, double leakageWatts) {
        int low = 0;
        int high = (int) topIndex;
        if (atStep(high, load, leakageWatts) <= budgetWatts) {
            return topIndex;
        }
        double lowWatts = atStep(0, load, leakageWatts);
        if (lowWatts >= budgetWatts) {
            return 0;
        }
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (atStep(middle, load, leakageWatts) <= budgetWatts) {
                low = middle;
            } else {
                high = middle;
            }
        }
        lowWatts = atStep(low, load, leakageWatts);
        return low + (budgetWatts - lowWatts) / (atStep(high, load, leakageWatts) - lowWatts);
    }

    private double atStep(int step, double load, double leakageWatts) {
        return silicon.baseWatts() + silicon.dynamicWatts() * load * relativeDynamic[step] + leakageWatts * relativeLeakage[step];
    }
}
