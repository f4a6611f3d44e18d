/**
 * Bytes in and out: YAML, tables, the journal, the study folder. May use the pure rooms below for the values it reads and writes, Jackson
 * and the table library; knows no verb and no face.
 */
package coldproof.files;
