package coldproof.plan;

/**
 * What is measured in a trial.
 *
 * @param name such as "render rate"
 * @param unit such as "frames/s"; may be empty
 * @param better which way is good
 */
public record Metric(String name, String unit, Better better) {}
