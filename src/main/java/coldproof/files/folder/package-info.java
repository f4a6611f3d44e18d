/**
 * The study folder: which file lies where, and that one process at a time writes to it. Enter at
 * {@link coldproof.files.folder.StudyFolder#open} to write and {@link coldproof.files.folder.StudyFolder#read} to look. May use
 * {@code quantity}, {@code study} and {@code files.journal}.
 */
package coldproof.files.folder;
