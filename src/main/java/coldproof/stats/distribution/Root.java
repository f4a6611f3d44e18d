package coldproof.stats.distribution;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BracketingNthOrderBrentSolver;
import org.apache.commons.math3.analysis.solvers.AllowedSolution;

/** Zeros of monotone functions, to the last digits of the argument. */
public final class Root {
    private static final double RELATIVE = 1e-15;
    private static final double ABSOLUTE = 1e-300;
    private static final int MOST_EVALUATIONS = 500;

    private Root() {}

    /**
     * The zero of a rising function, sought outwards from a guess.
     *
     * @param rising function of the whole line, may be infinite far out
     * @param guess where to begin
     * @param step first step outwards, above 0; it doubles until the sign has changed
     * @throws IllegalStateException if the sign does not change within the range of doubles
     */
    public static double ofRising(DoubleUnaryOperator rising, double guess, double step) {
        double here = rising.applyAsDouble(guess);
        if (here == 0) {
            return guess;
        }
        double direction = here < 0 ? 1 : -1;
        double near = guess;
        double reach = step;
        double far = guess + direction * reach;
        while (rising.applyAsDouble(far) * direction < 0) {
            near = far;
            reach *= 2;
            far = guess + direction * reach;
            if (Double.isInfinite(far)) {
                throw new IllegalStateException("no change of sign found from " + guess + " outwards");
            }
        }
        return between(rising, Math.min(near, far), Math.max(near, far));
    }

    /**
     * The zero of a monotone function between two points at which its signs differ.
     *
     * @throws org.apache.commons.math3.exception.NoBracketingException if the signs do not differ
     */
    public static double between(DoubleUnaryOperator function, double low, double high) {
        BracketingNthOrderBrentSolver solver = new BracketingNthOrderBrentSolver(RELATIVE, ABSOLUTE, 5);
        return solver.solve(MOST_EVALUATIONS, new Curve(function), low, high, AllowedSolution.ANY_SIDE);
    }

    /** A class with a name: a lambda of the library's old interface cannot be archived and would cost a quarter of the starting time. */
    private static final class Curve implements UnivariateFunction {
        private final DoubleUnaryOperator function;

        Curve(DoubleUnaryOperator function) {
            this.function = function;
        }

        @Override
        public double value(double argument) {
            return function.applyAsDouble(argument);
        }
    }
}
