/**
 * What was decided before: factors, levels, the layout, limits and the run sheet. Enter at {@link coldproof.plan.Plan} and
 * {@link coldproof.plan.Scheduler#draw}. Pure: knows no file and no clock; chance comes in as a generator. May use {@code quantity} only.
 */
package coldproof.plan;
