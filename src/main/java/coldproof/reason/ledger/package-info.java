/**
 * Sets devices side by side: how much faster or slower, per watt and per unit of money, with what uncertainty, and in which ranks. Enter at
 * {@link coldproof.reason.ledger.Ledgers#compare}. Pure: values in, records out. May use {@code quantity}, {@code plan} and {@code stats}.
 */
package coldproof.reason.ledger;
