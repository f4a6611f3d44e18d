/**
 * What happened at the bench: the closed set of events, each with its envelope, and the state of a study folded from them. Enter at
 * {@link coldproof.study.StudyState#fold}; a new kind of event is a record here, a word in {@link coldproof.study.EventKind} and a line
 * form in {@code files.journal}. Pure: no file, no clock. May use {@code quantity} and {@code plan}.
 */
package coldproof.study;
