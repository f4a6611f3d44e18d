/**
 * What comes next at the bench, and what to make of what the person says. Enter at {@link coldproof.reason.checklist.Checklist#next}. Pure:
 * takes the plan, the run sheet and the state of the study; a face or a job asks the questions. May use {@code quantity}, {@code physics},
 * {@code plan} and {@code study}.
 */
package coldproof.reason.checklist;
