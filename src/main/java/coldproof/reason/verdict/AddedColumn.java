package coldproof.reason.verdict;

import coldproof.stats.DotProduct;
import coldproof.stats.distribution.StudentT;
import coldproof.stats.model.LeastSquares;
import java.util.Optional;

/**
 * The t test of one more column in a linear model.
 *
 * @param slope its coefficient
 * @param standardError of the slope
 * @param degreesOfFreedom of the test
 * @param p two-sided
 */
record AddedColumn(double slope, double standardError, int degreesOfFreedom, double p) {
    private static final double ALIASED = 1e-9; // share of the column's squares that the model must leave of it

    /** Empty where the model leaves too little of the column or of the scores, or fewer than two degrees of freedom. */
    static Optional<AddedColumn> of(double[] scores, double[][] columns, double[] added) {
        LeastSquares model = LeastSquares.of(scores, columns);
        double[] free = model.leftOf(added);
        double[] left = model.residuals();
        double squares = DotProduct.of(free, free);
        double product = DotProduct.of(free, left);
        int df = model.degreesOfFreedom() - 1;
        if (df < 2 || model.isExact() || !(squares > ALIASED * DotProduct.of(added, added))) {
            return Optional.empty();
        }
        double slope = product / squares;
        double error = Math.sqrt(Math.max(0, model.residualSquares() - slope * product) / df / squares);
        return Optional.of(new AddedColumn(slope, error, df, slope == 0 ? 1 : StudentT.twoSidedP(slope / error, df)));
    }

    /** The largest size of the slope that its 95 % interval holds. */
    double largest() {
        return Math.abs(slope) + StudentT.upperPoint(0.025, degreesOfFreedom) * standardError;
    }
}
