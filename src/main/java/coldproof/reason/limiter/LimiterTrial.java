package coldproof.reason.limiter;

import coldproof.trace.TraceSummary;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A trial with its trace.
 *
 * @param levels level of every factor that makes the condition, by factor, in the order to be shown
 * @param session the session it belongs to; empty when not known
 * @param order place in the run order; NaN when not known
 * @param trace what its telemetry says
 * @param logScore logarithm of the score, turned so that more is better; NaN when there is none
 * @param loops rate of each loop of a looped workload
 */
public record LimiterTrial(Map<String, String> levels, String session, double order, TraceSummary trace, double logScore, Loops loops) {
    /** Copies its levels, keeping their order. */
    public LimiterTrial {
        levels = Collections.unmodifiableMap(new LinkedHashMap<>(levels));
    }

    /**
     * Loops inside the work. They are no replicates, but show whether the rate follows the clock.
     *
     * @param rates rate of each loop in any unit, higher is faster, above 0
     * @param endShares where each loop ends, as a share of the work, rising to 1
     */
    public record Loops(double[] rates, double[] endShares) {
        /** No loops. */
        public static final Loops NONE = new Loops(new double[0], new double[0]);

        /** Refuses arrays of different length; copies them. */
        public Loops {
            if (rates.length != endShares.length) {
                throw new IllegalArgumentException(rates.length + " rates for " + endShares.length + " ends");
            }
            rates = rates.clone();
            endShares = endShares.clone();
        }

        /** Loops of equal length in time. */
        public static Loops ofRates(double[] rates) {
            double[] ends = new double[rates.length];
            for (int i = 0; i < ends.length; i++) {
                ends[i] = (i + 1.0) / ends.length;
            }
            return new Loops(rates, ends);
        }

        /** Loops of equal work, told by how long each took. */
        public static Loops ofTimes(double[] seconds) {
            double total = 0;
            for (double one : seconds) {
                total += one;
            }
            double[] rates = new double[seconds.length];
            double[] ends = new double[seconds.length];
            double past = 0;
            for (int i = 0; i < seconds.length; i++) {
                past += seconds[i];
                rates[i] = 1 / seconds[i];
                ends[i] = past / total;
            }
            return new Loops(rates, ends);
        }

        @Override
        public double[] rates() {
            return rates.clone();
        }

        @Override
        public double[] endShares() {
            return endShares.clone();
        }
    }
}
