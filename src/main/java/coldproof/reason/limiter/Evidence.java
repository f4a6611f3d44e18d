package coldproof.reason.limiter;

/**
 * A finding with how likely it is under each hypothesis. The likelihoods are judgements, not measurements; they are kept coarse, and no
 * single one can outweigh two others.
 *
 * @param text what was found, to be shown
 * @param ofTheWork whether it tells of the work, not of what holds the clock
 * @param heat how likely it is when heat limits, in (0, 1]
 * @param power when package power is limited
 * @param clock when the clock ceiling limits
 * @param supply when the supply limits
 * @param workload when the workload limits
 */
record Evidence(String text, boolean ofTheWork, double heat, double power, double clock, double supply, double workload) {
    Evidence {
        for (double likelihood : new double[] {heat, power, clock, supply, workload}) {
            if (!(likelihood > 0 && likelihood <= 1)) {
                throw new IllegalArgumentException("a likelihood of " + likelihood + " for: " + text);
            }
        }
    }

    double under(Hypothesis hypothesis) {
        return switch (hypothesis) {
            case HEAT -> heat;
            case POWER -> power;
            case CLOCK -> clock;
            case SUPPLY -> supply;
            case WORKLOAD -> workload;
        };
    }
}
