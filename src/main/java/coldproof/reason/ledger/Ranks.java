package coldproof.reason.ledger;

import coldproof.stats.interval.ConfidenceInterval;
import java.util.List;

/**
 * Ranks that the data allow: a device may stand as high as all but those shown to be faster, and as low as all but those shown to be slower.
 * Every pair is compared at a level that keeps the chance of any wrong rank interval in the table below one minus the ledger's level
 * (Bonferroni over all pairs).
 */
final class Ranks {
    private final int[] best;
    private final int[] worst;

    Ranks(List<Speeds.Speed> speeds, double level) {
        int n = speeds.size();
        best = new int[n];
        worst = new int[n];
        double pairs = Math.max(1, n * (n - 1) / 2.0);
        double pairLevel = 1 - (1 - level) / pairs;
        java.util.Arrays.fill(best, 1);
        java.util.Arrays.fill(worst, n);
        for (int i = 0; i < n; i++) {
            for (int j = i + 1; j < n; j++) {
                Speeds.Speed difference = speeds.get(i).minus(speeds.get(j));
                if (!difference.stated()) {
                    continue;
                }
                ConfidenceInterval interval = difference.log().interval(pairLevel);
                if (interval.low() > 0) {
                    best[j]++;
                    worst[i]--;
                } else if (interval.high() < 0) {
                    best[i]++;
                    worst[j]--;
                }
            }
        }
    }

    int best(int device) {
        return best[device];
    }

    int worst(int device) {
        return worst[device];
    }
}
