/**
 * Ledger files: devices with their figures, as people write them. Enter at {@link coldproof.files.ledger.LedgerReader#read}. May use
 * {@code quantity}, {@code plan}, {@code stats}, {@code reason.ledger} and {@code files.yaml}.
 */
package coldproof.files.ledger;
