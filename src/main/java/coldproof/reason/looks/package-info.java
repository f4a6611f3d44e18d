/**
 * When a study may be judged before it is over, and what that costs. Enter at {@link coldproof.reason.looks.LookSchedule#of} (where the looks lie
 * in a run sheet) and {@link coldproof.reason.looks.LookCost#of} (bounds, inflation, mean size). Pure: chance comes in as a generator. May use
 * {@code quantity}, {@code stats} and {@code plan}.
 */
package coldproof.reason.looks;
