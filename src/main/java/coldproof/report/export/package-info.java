/**
 * The tables of a study as other programs read them in one line: tidy, one row a trial, with a dictionary that explains every column. Enter
 * at {@link coldproof.report.export.StudyExport#tables} and {@link coldproof.report.export.CsvText#of}. Values in, text out; writes no file.
 */
package coldproof.report.export;
