/**
 * Reads delimited text written by anybody's program: tables of trials, which fit in memory, at
 * {@link coldproof.files.table.TableReader#read}. Finds encoding, delimiter, heading and decimal mark by itself and names the place of
 * whatever it cannot use. May use {@code quantity} and {@code trace}; knows nothing of what the numbers mean.
 */
package coldproof.files.table;
