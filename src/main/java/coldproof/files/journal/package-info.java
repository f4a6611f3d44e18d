/**
 * The journal file: one JSON object a line, each with a checksum that covers the one before. Enter at
 * {@link coldproof.files.journal.Journal#open} to write and at {@link coldproof.files.journal.JournalReader#read} to read; the format is
 * described in the resource {@code coldproof/journal-format.md}. Reaches the file system through {@link coldproof.files.journal.Disk} only.
 * May use {@code quantity} and {@code study}.
 */
package coldproof.files.journal;
