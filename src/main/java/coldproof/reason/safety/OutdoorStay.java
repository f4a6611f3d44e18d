package coldproof.reason.safety;

/**
 * One planned session in the open air beside what the day allows.
 *
 * @param session its number
 * @param condition the level that means outdoors
 * @param seconds how long it keeps the person out: opening, soak and trials, s
 * @param trials how many trials it has
 * @param trialSeconds one trial, s
 * @param budget what limits one stay
 */
public record OutdoorStay(int session, String condition, double seconds, int trials, double trialSeconds, OutdoorBudget budget) {
    /** Whether it fits; a stay of exactly the longest time does. */
    public boolean fits() {
        return budget.binding().isEmpty() || seconds <= budget.binding().get().seconds();
    }

    /** The most trials that would fit after opening and soak; 0 when not even one does. */
    public int trialsThatFit() {
        double opening = seconds - trials * trialSeconds;
        return budget.binding().map(limit -> (int) Math.max(0, Math.floor((limit.seconds() - opening) / trialSeconds + 1e-9))).orElse(trials);
    }
}
