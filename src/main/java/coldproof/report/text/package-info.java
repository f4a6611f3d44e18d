/**
 * Plain text for a screen or a file: tables, problems, verdicts. Lines fit 80 columns and read without colour. Enter at the class named
 * after the verb. Pure: returns text. Whatever came from a file passes {@link coldproof.report.text.Harmless} first.
 */
package coldproof.report.text;
