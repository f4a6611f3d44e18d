package coldproof.stats.propagation;

import coldproof.stats.distribution.StudentT;
import coldproof.stats.interval.ConfidenceInterval;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A sum of independent quantities, each times its sensitivity coefficient, with the uncertainty that the law of propagation gives it.
 *
 * <p>{@code y = sum c_i x_i}; {@code u(y)^2 = sum c_i^2 u_i^2}; effective degrees of freedom {@code u(y)^4 / sum ((c_i u_i)^4 / df_i)}
 * (Welch-Satterthwaite). Coefficients of one quantity add up, so that a reference or a power that enters several ratios is counted as one
 * error, not as several independent ones. Immutable.
 *
 * @see "JCGM 100:2008, Guide to the expression of uncertainty in measurement, equations (10) and (G.2b)"
 */
public final class Combination {
    private final Map<String, Quantity> quantities;
    private final Map<String, Double> coefficients;

    private Combination(Map<String, Quantity> quantities, Map<String, Double> coefficients) {
        this.quantities = quantities;
        this.coefficients = coefficients;
    }

    /** The quantity itself. */
    public static Combination of(Quantity quantity) {
        return new Combination(Map.of(quantity.name(), quantity), Map.of(quantity.name(), 1.0));
    }

    /** This and so many times the other. */
    public Combination plus(double coefficient, Combination other) {
        Map<String, Quantity> all = new LinkedHashMap<>(quantities);
        Map<String, Double> sums = new LinkedHashMap<>(coefficients);
        other.quantities.forEach((name, quantity) -> {
            Quantity known = all.putIfAbsent(name, quantity);
            if (known != null && !known.equals(quantity)) {
                throw new IllegalArgumentException("two quantities are called " + name);
            }
            sums.merge(name, coefficient * other.coefficients.get(name), Double::sum);
        });
        return new Combination(all, sums);
    }

    /** So many times this. */
    public Combination times(double factor) {
        Map<String, Double> scaled = new LinkedHashMap<>();
        coefficients.forEach((name, coefficient) -> scaled.put(name, factor * coefficient));
        return new Combination(quantities, scaled);
    }

    /** {@code sum c_i x_i}. */
    public double estimate() {
        double sum = 0;
        for (Map.Entry<String, Double> each : coefficients.entrySet()) {
            sum += each.getValue() * quantities.get(each.getKey()).estimate();
        }
        return sum;
    }

    /** Standard uncertainty of the sum, 0 or more. */
    public double standardUncertainty() {
        double squares = 0;
        for (Map.Entry<String, Double> each : coefficients.entrySet()) {
            double part = each.getValue() * quantities.get(each.getKey()).standardUncertainty();
            squares += part * part;
        }
        return Math.sqrt(squares);
    }

    /** Effective degrees of freedom, above 0; infinity where no part has finite ones or nothing is uncertain. */
    public double degreesOfFreedom() {
        double variance = Math.pow(standardUncertainty(), 2);
        double sum = 0;
        for (Map.Entry<String, Double> each : coefficients.entrySet()) {
            Quantity quantity = quantities.get(each.getKey());
            double share = variance == 0 ? 0 : Math.pow(each.getValue() * quantity.standardUncertainty(), 2) / variance;
            sum += share * share / quantity.degreesOfFreedom();
        }
        return sum == 0 ? Double.POSITIVE_INFINITY : 1 / sum;
    }

    /**
     * Two-sided t interval.
     *
     * @param level in (0, 1)
     */
    public ConfidenceInterval interval(double level) {
        double reach = StudentT.upperPoint((1 - level) / 2, degreesOfFreedom()) * standardUncertainty();
        return new ConfidenceInterval(level, estimate() - reach, estimate() + reach);
    }
}
