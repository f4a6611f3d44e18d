/**
 * What a report says, before it is a page: sections of prose, facts, tables, plots and lists made from a study. Enter at
 * {@link coldproof.report.page.StudyPage}; the same page is written as HTML, Markdown or plain text by other rooms. Pure: no file, no clock.
 */
package coldproof.report.page;
