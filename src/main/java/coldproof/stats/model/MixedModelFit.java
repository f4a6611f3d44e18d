package coldproof.stats.model;

import coldproof.stats.DotProduct;

/**
 * A fitted mixed model: variances, coefficients, and tests of contrasts and terms with Satterthwaite's or Kenward and Roger's degrees of
 * freedom. Immutable.
 */
public final class MixedModelFit {
    private final OrthonormalColumns q;
    private final NestedBlocks data;
    private final ProfilePoint point;
    private final ErrorDegrees degrees;
    private final double[] coordinates;
    private final double runVariance;
    private final double[] ratio;
    private final int residualDegrees;
    private final ContrastCovariance covariance;

    MixedModelFit(OrthonormalColumns q, double[] ordinary, NestedBlocks data, ProfilePoint point, ErrorDegrees degrees) {
        this.q = q;
        this.data = data;
        this.point = point;
        this.degrees = degrees;
        residualDegrees = data.trials - data.columns;
        runVariance = point.residualSquares / residualDegrees;
        ratio = point.ratios();
        coordinates = ordinary;
        for (int j = 0; j < coordinates.length; j++) {
            coordinates[j] += point.coordinates[j];
        }
        covariance = new ContrastCovariance(point, residualDegrees, runVariance);
    }

    /** Run-to-run variance of the log score, above 0. */
    public double runVariance() {
        return runVariance;
    }

    /** Session-to-session variance of the log score; exactly 0 where the fit is singular. */
    public double sessionVariance() {
        return ratio[0] * runVariance;
    }

    /** Block-to-block variance of the log score; 0 where the model has no blocks or the fit is singular. */
    public double blockVariance() {
        return ratio.length > 1 ? ratio[1] * runVariance : 0;
    }

    /** Whether a variance between sessions or blocks came out as exactly 0: the likelihood would fall on either side of its bound. */
    public boolean isSingular() {
        for (double r : ratio) {
            if (r == 0) {
                return true;
            }
        }
        return false;
    }

    /** Degrees of freedom the plan leaves between sessions (inside blocks, where there are blocks), whatever the variances. */
    public int sessionDegreesOfFreedom() {
        return degrees.sessions();
    }

    /** Degrees of freedom the plan leaves between blocks; 0 without blocks. */
    public int blockDegreesOfFreedom() {
        return degrees.blocks();
    }

    /** Degrees of freedom the plan leaves within sessions. */
    public int runDegreesOfFreedom() {
        return degrees.runs();
    }

    /** Minus twice the restricted log likelihood, constants included. */
    public double criterion() {
        return residualDegrees * (1 + Math.log(2 * Math.PI / residualDegrees)) + point.criterion + 2 * q.logDeterminant();
    }

    /** Generalised least squares coefficients, in the order of the columns of the effects. */
    public double[] coefficients() {
        return q.coefficients(coordinates);
    }

    /** Number of sessions that held trials. */
    public int sessions() {
        return data.sessions;
    }

    /**
     * Tests a contrast with Satterthwaite's degrees of freedom, {@code 2 v^2 / (g'A g)}: v its variance, g the gradient of v, A twice the
     * inverse of the observed information. A variance at 0 counts as known, so that a singular fit gives the degrees of freedom of all
     * trials; use Kenward-Roger, or a cap, there.
     *
     * @param contrast a coefficient for each column of the effects
     * @throws IllegalArgumentException if the length is wrong or the contrast is zero
     * @see "F. E. Satterthwaite, Biometrics Bulletin 2 (1946) 110-114; F. G. Giesbrecht, J. C. Burns, Biometrics 41 (1985) 477-486"
     */
    public Estimate satterthwaite(double[] contrast) {
        double[] l = inCoordinates(contrast);
        return Estimate.of(DotProduct.of(l, coordinates), Math.sqrt(covariance.variance(l)), covariance.satterthwaiteDegrees(l));
    }

    /**
     * Tests a contrast with Kenward and Roger's adjusted standard error and degrees of freedom (expected information; a variance at 0 still
     * counts as estimated).
     *
     * @param contrast a coefficient for each column of the effects
     * @throws IllegalArgumentException if the length is wrong or the contrast is zero
     * @see "M. G. Kenward, J. H. Roger, Biometrics 53 (1997) 983-997"
     */
    public Estimate kenwardRoger(double[] contrast) {
        double[] l = inCoordinates(contrast);
        return Estimate.of(DotProduct.of(l, coordinates), Math.sqrt(covariance.adjustedVariance(l)),
                covariance.kenwardRogerDegrees(l));
    }

    /**
     * F test that all contrasts are zero, with denominator degrees of freedom by Fai and Cornelius.
     *
     * @param contrasts linearly independent, one a row
     * @throws IllegalArgumentException if a row has the wrong length or the rows depend on each other
     * @see "A. H.-T. Fai, P. L. Cornelius, J. Statist. Comput. Simul. 54 (1996) 363-378"
     */
    public FTest satterthwaite(double[][] contrasts) {
        double[][] rows = inCoordinates(contrasts);
        return MultipleContrasts.satterthwaite(rows, SmallMatrix.times(rows, coordinates), covariance);
    }

    /**
     * F test that all contrasts are zero, scaled and with denominator degrees of freedom by Kenward and Roger.
     *
     * @param contrasts linearly independent, one a row
     * @throws IllegalArgumentException if a row has the wrong length or the rows depend on each other
     */
    public FTest kenwardRoger(double[][] contrasts) {
        double[][] rows = inCoordinates(contrasts);
        return MultipleContrasts.kenwardRoger(rows, SmallMatrix.times(rows, coordinates), covariance);
    }

    private double[][] inCoordinates(double[][] contrasts) {
        if (contrasts.length == 0) {
            throw new IllegalArgumentException("no contrast to test");
        }
        double[][] rows = new double[contrasts.length][];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = inCoordinates(contrasts[i]);
        }
        return rows;
    }

    private double[] inCoordinates(double[] contrast) {
        if (contrast.length != coordinates.length) {
            throw new IllegalArgumentException("a contrast of " + contrast.length + " entries for " + coordinates.length + " coefficients");
        }
        double[] l = q.contrastInCoordinates(contrast);
        if (!(DotProduct.of(l, l) > 0)) {
            throw new IllegalArgumentException("the contrast is zero or NaN");
        }
        return l;
    }
}
