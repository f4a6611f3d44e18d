package coldproof.stats.model;

/**
 * Finds the variance ratios at which the profiled restricted likelihood is largest. With one ratio a coarse scan brackets every rise from a
 * falling to a climbing criterion, so that a second, lower minimum is not missed, and Newton's method kept inside the bracket drives the
 * derivative to rounding. With two ratios a grid gives the start of a Newton iteration on those ratios that are not held at zero.
 */
final class RestrictedLikelihood {
    private static final double SMALLEST_SHARE = 1e-5; // of run variance over trials per session: below it the ratio is as good as zero
    private static final double STEP = 4;
    private static final int SCAN = 20; // 4^20 = 1e12 above the smallest
    private static final int NEWTON_LIMIT = 200;
    private static final double ROUNDING = 1e-15;

    private RestrictedLikelihood() {}

    static ProfilePoint maximise(NestedBlocks data) {
        return data.blocks == 0 ? overOneRatio(data) : new TwoRatios(data).maximise();
    }

    private static ProfilePoint overOneRatio(NestedBlocks data) {
        double perSession = (double) data.trials / data.sessions;
        double low = 0;
        ProfilePoint atLow = new ProfilePoint(data, 0);
        ProfilePoint best = atLow;
        for (int i = 0; i <= SCAN; i++) {
            double high = SMALLEST_SHARE * Math.pow(STEP, i) / perSession;
            ProfilePoint atHigh = new ProfilePoint(data, high);
            if (atLow.gradient[0] < 0 && atHigh.gradient[0] >= 0) {
                ProfilePoint inside = minimumBetween(data, low, high);
                best = inside.criterion < best.criterion ? inside : best;
            }
            low = high;
            atLow = atHigh;
        }
        if (atLow.criterion < best.criterion) {
            throw new IllegalArgumentException("the run-to-run variance is vanishingly small beside the session variance");
        }
        return best;
    }

    private static ProfilePoint minimumBetween(NestedBlocks data, double from, double to) {
        double low = from;
        double high = to;
        double ratio = from == 0 ? to / 2 : Math.sqrt(from * to);
        ProfilePoint point = new ProfilePoint(data, ratio);
        for (int i = 0; i < NEWTON_LIMIT; i++) {
            if (point.gradient[0] < 0) {
                low = ratio;
            } else {
                high = ratio;
            }
            double curvature = point.curvature(0, 0);
            double next = ratio - point.gradient[0] / curvature;
            boolean usable = curvature > 0 && next > low && next < high;
            if (!usable) {
                next = (low + high) / 2;
            }
            if (Math.abs(next - ratio) <= ROUNDING * ratio || next <= low || next >= high) {
                return point;
            }
            ratio = next;
            point = new ProfilePoint(data, ratio);
        }
        return point;
    }
}
