/**
 * Writes HTML and SVG that cannot be broken out of: every text and every value of an attribute is escaped, every name is checked, every
 * element is closed. Enter at {@link coldproof.report.markup.Markup}. Knows no page and no study.
 */
package coldproof.report.markup;
