/**
 * Text out: JSON, plain text, pages. Everything returns or appends text; nothing here opens a file or knows a terminal. May use the pure
 * rooms below and, in {@code json}, Jackson.
 */
package coldproof.report;
