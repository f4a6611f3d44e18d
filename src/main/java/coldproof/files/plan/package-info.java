/**
 * The plan as YAML: {@link coldproof.files.plan.PlanReader#read} refuses with places, {@link coldproof.files.plan.PlanWriter#write} writes what
 * a person could have written by hand. May use {@code quantity}, {@code plan} and {@code files.yaml}.
 */
package coldproof.files.plan;
