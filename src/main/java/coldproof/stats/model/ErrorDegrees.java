package coldproof.stats.model;

/**
 * Degrees of freedom that the plan leaves in each error stratum once the fixed effects are fitted, whatever the scores say.
 *
 * @param blocks between blocks; 0 where there are none
 * @param sessions between sessions (inside blocks, where there are blocks)
 * @param runs within sessions
 * @param runSquares sum of squares within sessions that the fixed effects leave
 */
record ErrorDegrees(int blocks, int sessions, int runs, double runSquares) {
    private static final double RANK_TOLERANCE = 1e-10; // the columns have length 1, rounding leaves about 1e-15
    private static final double ROUNDING = 1e-14; // relative error of one log score after the sweeps

    static ErrorDegrees of(NestedBlocks data) {
        double[] left = new double[1];
        int withinSessions = rank(data.within, data.columns, left);
        int runs = data.trials - data.sessions - withinSessions;
        int beyondEffects = data.sessions + withinSessions - data.columns;
        if (data.blocks == 0) {
            return new ErrorDegrees(0, beyondEffects, runs, left[0]);
        }
        int withinBlocks = rank(withinBlocks(data), data.columns, new double[1]);
        int blocks = data.blocks + withinBlocks - data.columns;
        return new ErrorDegrees(blocks, beyondEffects - blocks, runs, left[0]);
    }

    private static double[][] withinBlocks(NestedBlocks data) {
        double[][] products = new double[data.columns + 1][];
        for (int i = 0; i < products.length; i++) {
            products[i] = data.within[i].clone();
        }
        double[] blockSize = new double[data.blocks];
        double[][] blockMean = new double[data.blocks][data.columns + 1];
        for (int i = 0; i < data.sessions; i++) {
            blockSize[data.blockOf[i]] += data.size[i];
        }
        for (int i = 0; i < data.sessions; i++) {
            int b = data.blockOf[i];
            for (int j = 0; j <= data.columns; j++) {
                blockMean[b][j] += data.size[i] * data.mean[i][j] / blockSize[b];
            }
        }
        double[] distance = new double[data.columns + 1];
        for (int i = 0; i < data.sessions; i++) {
            for (int j = 0; j <= data.columns; j++) {
                distance[j] = data.mean[i][j] - blockMean[data.blockOf[i]][j];
            }
            NestedBlocks.addOuter(products, distance, data.size[i]);
        }
        return products;
    }

    /** Rank of the leading block by elimination with the largest pivot first; {@code left} receives the last diagonal entry swept by it. */
    private static int rank(double[][] products, int columns, double[] left) {
        double[][] a = new double[products.length][];
        for (int i = 0; i < a.length; i++) {
            a[i] = products[i].clone();
        }
        boolean[] used = new boolean[columns];
        int rank = 0;
        while (rank < columns) {
            int pivot = -1;
            for (int j = 0; j < columns; j++) {
                if (!used[j] && (pivot < 0 || a[j][j] > a[pivot][pivot])) {
                    pivot = j;
                }
            }
            if (!(a[pivot][pivot] > RANK_TOLERANCE)) {
                break;
            }
            used[pivot] = true;
            rank++;
            for (int i = 0; i < a.length; i++) {
                if (i < columns && used[i]) {
                    continue;
                }
                double factor = a[i][pivot] / a[pivot][pivot];
                for (int j = 0; j < a.length; j++) {
                    a[i][j] -= factor * a[pivot][j];
                }
            }
        }
        left[0] = a[columns][columns];
        return rank;
    }

    /** Refuses data in which a variance has nothing to be estimated from. */
    void requireEnough(double largestScore) {
        if (runs < 1) {
            throw new IllegalArgumentException("no degrees of freedom are left within sessions: " + runs);
        }
        if (sessions < 1) {
            throw new IllegalArgumentException("no degrees of freedom are left between sessions: one session for each level cannot tell"
                    + " the level from the session");
        }
        double noise = ROUNDING * largestScore;
        if (!(runSquares > runs * noise * noise)) {
            throw new IllegalArgumentException("the scores do not vary within sessions: there is no run-to-run noise to test against");
        }
    }
}
