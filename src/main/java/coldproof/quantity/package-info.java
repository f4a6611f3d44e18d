/**
 * Numbers with their units, intervals, and what is wrong with something a person wrote. Enter at {@link coldproof.quantity.QuantityText}
 * for text and at {@link coldproof.quantity.Problem} for mistakes. The bottom of the building: may use nothing of ours and touches no
 * file, clock or terminal.
 */
package coldproof.quantity;
