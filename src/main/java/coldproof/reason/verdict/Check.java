package coldproof.reason.verdict;

/**
 * A look at whether the data are what the method assumes. Checks warn; they never drop a trial.
 *
 * @param name such as "drift"
 * @param warns whether it found something to look at
 * @param text what was found, in a sentence
 */
public record Check(String name, boolean warns, String text) {}
