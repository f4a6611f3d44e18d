/**
 * Decides whether a change is real. Enter at {@link coldproof.reason.verdict.Verdicts#judge} for one change,
 * {@link coldproof.reason.verdict.Comparisons#judge} for several and {@link coldproof.reason.verdict.LookedVerdicts#judge} for a plan with looks
 * before its end; the rest is package-private or a record it takes or returns. Pure: chance for the randomisation test and the bounds of small
 * studies comes in as a generator. May use {@code quantity}, {@code stats}, {@code plan}, {@code reason.orders} and {@code reason.looks}.
 */
package coldproof.reason.verdict;
