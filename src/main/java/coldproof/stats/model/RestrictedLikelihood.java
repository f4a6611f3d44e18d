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
    private static final double LAST_STEP = 1e-8; // relative; Newton's method squares it, so that what is left is rounding
    private static final double ROUGH = 1e-5; // relative; Newton's method then needs two steps
    private static final int ROUGH_LIMIT = 30;

    private RestrictedLikelihood() {}

    static ProfilePoint maximise(NestedBlocks data) {
        return data.blocks == 0 ? overOneRatio(data) : new TwoRatios(data).maximise();
    }

    private static ProfilePoint overOneRatio(NestedBlocks data) {
        double perSession = (double) data.trials / data.sessions;
        RatioGradient gradient = new RatioGradient(data);
        ProfilePoint best = new ProfilePoint(data, 0);
        double low = 0;
        double atLow = best.gradient[0];
        for (int i = 0; i <= SCAN; i++) {
            double high = SMALLEST_SHARE * Math.pow(STEP, i) / perSession;
            double atHigh = gradient.at(high);
            if (atLow < 0 && atHigh >= 0) {
                ProfilePoint inside = minimumBetween(data, gradient, low, high);
                best = inside.criterion < best.criterion ? inside : best;
            }
            low = high;
            atLow = atHigh;
        }
        if (atLow < 0 && new ProfilePoint(data, low).criterion < best.criterion) {
            throw new IllegalArgumentException("the run-to-run variance is vanishingly small beside the session variance");
        }
        return best;
    }

    /** A ratio close to the zero of the rising derivative, by false position with Illinois weights. */
    private static double near(RatioGradient gradient, double from, double to) {
        double low = from;
        double high = to;
        double atLow = gradient.at(from);
        double atHigh = gradient.at(to);
        for (int i = 0; i < ROUGH_LIMIT && high - low > ROUGH * high; i++) {
            double middle = (low * atHigh - high * atLow) / (atHigh - atLow);
            if (!(middle > low && middle < high)) {
                break;
            }
            double atMiddle = gradient.at(middle);
            if (Math.abs(atMiddle) <= ROUGH * (Math.abs(atLow) + Math.abs(atHigh))) {
                return middle;
            }
            if (atMiddle < 0) {
                low = middle;
                atLow = atMiddle;
                atHigh /= 2;
            } else {
                high = middle;
                atHigh = atMiddle;
                atLow /= 2;
            }
        }
        return low > 0 ? Math.sqrt(low * high) : high / 2;
    }

    private static ProfilePoint minimumBetween(NestedBlocks data, RatioGradient gradient, double from, double to) {
        double low = from;
        double high = to;
        double ratio = near(gradient, from, to);
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
            double step = Math.abs(next - ratio);
            if (step == 0 || next <= low || next >= high) {
                return point;
            }
            ratio = next;
            point = new ProfilePoint(data, ratio);
            if (usable && step <= LAST_STEP * ratio) {
                return point;
            }
        }
        return point;
    }
}
