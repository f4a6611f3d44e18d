/**
 * The documents of {@code --json}: one class per verb, keys as scripts rely on them. Enter at the class named after the verb; all build a
 * {@link coldproof.report.json.JsonObject}. Percents are plain numbers, probabilities 0 to 1, temperatures °C, times s; what does not
 * exist is null.
 */
package coldproof.report.json;
