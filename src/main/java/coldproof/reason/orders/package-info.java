/**
 * The run orders a plan's scheduler draws from, as the randomisation test permutes them. Enter at {@link coldproof.reason.orders.DrawnOrders}.
 * Pure. May use {@code plan} and {@code stats}.
 */
package coldproof.reason.orders;
