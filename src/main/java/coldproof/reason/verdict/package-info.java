/**
 * Decides whether a change is real. Enter at {@link coldproof.reason.verdict.Verdicts#judge}; the rest is package-private or a record it takes
 * or returns. Pure: chance for the randomisation test comes in as a generator. May use {@code quantity}, {@code stats}, {@code plan}.
 */
package coldproof.reason.verdict;
