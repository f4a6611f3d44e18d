/**
 * Writes a page as plain text or as Markdown; a plot stands as its description. Enter at {@link coldproof.report.plain.TextPage} or
 * {@link coldproof.report.plain.MarkdownPage}.
 */
package coldproof.report.plain;
