package coldproof.stats.distribution;

/** {@code Phi(steepness s - shift)}: the conditional probability behind the noncentral t distribution. */
record NormalStep(double steepness, double shift) implements ChiMixture.Kernel {
    @Override
    public double at(double s) {
        return Normal.lower(steepness * s - shift);
    }

    @Override
    public double logSlope(double s) {
        return steepness * Normal.inverseMills(steepness * s - shift);
    }

    /** Average of this step over {@code s} in (0, end). */
    double average(ChiMixture mixture, double end) {
        return mixture.average(this, end, Math.abs(steepness), shift / steepness);
    }
}
