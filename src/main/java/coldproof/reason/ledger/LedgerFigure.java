package coldproof.reason.ledger;

import coldproof.quantity.LogRatio;
import coldproof.stats.interval.Moments;
import coldproof.stats.propagation.Quantity;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A number about a device and where it comes from.
 *
 * @param value above 0, in the unit of its workload
 * @param uncertaintyPercent standard uncertainty of the value, percent of it, 0 or more; empty where the source states none
 * @param degreesOfFreedom of that uncertainty, above 0; infinity where the source does not say how often it measured
 * @param repeats how often it was measured, where known
 * @param source who says so, never blank
 * @param date when, ISO 8601, may be empty
 * @param own whether it comes from a study of one's own
 */
public record LedgerFigure(double value, OptionalDouble uncertaintyPercent, double degreesOfFreedom, OptionalInt repeats, String source, String date,
        boolean own) {
    /** Refuses a value that has no logarithm and an uncertainty below 0. */
    public LedgerFigure {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("a value must be above 0, not " + value);
        }
        if (uncertaintyPercent.isPresent() && !(uncertaintyPercent.getAsDouble() >= 0 && uncertaintyPercent.getAsDouble() < 1e6)) {
            throw new IllegalArgumentException("an uncertainty must be 0 % or more, not " + uncertaintyPercent.getAsDouble() + " %");
        }
    }

    /**
     * The figure of single results: the mean of their logarithms with the uncertainty that their spread gives it.
     *
     * @param logs logarithms of one or more results; the uncertainty of a single one is not known
     */
    public static LedgerFigure ofLogs(double[] logs, String source, String date, boolean own) {
        Moments moments = Moments.of(logs);
        boolean several = logs.length > 1;
        OptionalDouble uncertainty = several ? OptionalDouble.of(LogRatio.cvPercentOfLogSd(moments.standardDeviation() / Math.sqrt(logs.length)))
                : OptionalDouble.empty();
        return new LedgerFigure(Math.exp(moments.mean()), uncertainty, several ? logs.length - 1.0 : Double.POSITIVE_INFINITY, OptionalInt.of(logs.length),
                source, date, own);
    }

    /** The logarithm of the value; an unstated uncertainty is carried as 0 and must be told apart by {@link #isStated}. */
    Quantity log(String name) {
        return new Quantity(name, Math.log(value), LogRatio.logSdOfCv(uncertaintyPercent.orElse(0)), degreesOfFreedom);
    }

    /** Whether the source says how sure the value is. */
    public boolean isStated() {
        return uncertaintyPercent.isPresent();
    }
}
