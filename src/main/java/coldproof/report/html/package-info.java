/**
 * Writes a page as one HTML file that needs nothing beside itself: no network, no script, no font; light, dark and printed. Enter at
 * {@link coldproof.report.html.HtmlPage}.
 */
package coldproof.report.html;
