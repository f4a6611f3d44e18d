package coldproof.stats.model;

/** The search over session and block ratios together; see {@link RestrictedLikelihood}. */
final class TwoRatios {
    private static final double[] GRID = {0, 0.03, 0.3, 1, 3, 30, 300}; // in units of the smallest variance of a mean below
    private static final int NEWTON_LIMIT = 200;
    private static final int HALVINGS = 40;
    private static final double ROUNDING = 1e-15;

    private final NestedBlocks data;

    TwoRatios(NestedBlocks data) {
        this.data = data;
    }

    ProfilePoint maximise() {
        double perSession = (double) data.trials / data.sessions;
        double perBlock = (double) data.trials / data.blocks;
        double[] start = null;
        double lowest = Double.POSITIVE_INFINITY;
        for (double first : GRID) {
            for (double second : GRID) {
                double[] ratio = {first / perSession, second / perBlock};
                double criterion = new ProfilePoint(data, ratio).criterion;
                if (criterion < lowest) {
                    lowest = criterion;
                    start = ratio;
                }
            }
        }
        return descend(start);
    }

    private ProfilePoint descend(double[] start) {
        double[] ratio = start;
        ProfilePoint point = new ProfilePoint(data, ratio);
        for (int i = 0; i < NEWTON_LIMIT; i++) {
            boolean[] free = {ratio[0] > 0 || point.gradient[0] < 0, ratio[1] > 0 || point.gradient[1] < 0};
            double[] step = step(point, free);
            double[] next = null;
            ProfilePoint atNext = null;
            double length = 1;
            for (int halving = 0; halving < HALVINGS; halving++, length /= 2) {
                next = new double[] {Math.max(0, ratio[0] + length * step[0]), Math.max(0, ratio[1] + length * step[1])};
                atNext = new ProfilePoint(data, next);
                if (atNext.criterion <= point.criterion + ROUNDING * Math.abs(point.criterion)) {
                    break;
                }
            }
            double moved = Math.max(relative(ratio[0], next[0]), relative(ratio[1], next[1]));
            ratio = next;
            point = atNext;
            if (moved <= 2 * ROUNDING) {
                return point;
            }
        }
        return point;
    }

    private static double relative(double from, double to) {
        return from == to ? 0 : Math.abs(from - to) / Math.max(from, to);
    }

    /** Newton's step on the free ratios, or one by average information where the criterion is not convex. */
    private static double[] step(ProfilePoint point, boolean[] free) {
        double[][] curvature = new double[2][2];
        for (int k = 0; k < 2; k++) {
            for (int l = 0; l < 2; l++) {
                curvature[k][l] = free[k] && free[l] ? point.curvature(k, l) : k == l ? 1 : 0;
            }
        }
        double determinant = curvature[0][0] * curvature[1][1] - curvature[0][1] * curvature[1][0];
        if (!(curvature[0][0] > 0 && determinant > 0)) {
            for (int k = 0; k < 2; k++) {
                for (int l = 0; l < 2; l++) {
                    curvature[k][l] = free[k] && free[l] ? point.traceOfPair(k, l) : k == l ? 1 : 0;
                }
            }
            determinant = curvature[0][0] * curvature[1][1] - curvature[0][1] * curvature[1][0];
        }
        double first = free[0] ? point.gradient[0] : 0;
        double second = free[1] ? point.gradient[1] : 0;
        return new double[] {
            (-curvature[1][1] * first + curvature[0][1] * second) / determinant,
            (curvature[1][0] * first - curvature[0][0] * second) / determinant
        };
    }
}
