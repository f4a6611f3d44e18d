/**
 * Decides whether a change is real. Enter at {@link coldproof.reason.verdict.Verdicts#judge} for one change and
 * {@link coldproof.reason.verdict.Comparisons#judge} for several; the rest is package-private or a record it takes or returns. Pure: chance for
 * the randomisation test comes in as a generator. May use {@code quantity}, {@code stats}, {@code plan}.
 */
package coldproof.reason.verdict;
