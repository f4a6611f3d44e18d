package coldproof.study;

/**
 * A table of trials made elsewhere was read in; its trials follow as entries of their own.
 *
 * @param file name of the file as the person gave it
 * @param digest digest of its bytes, lower-case hexadecimal
 * @param rows trials read from it, 0 or more
 */
public record ImportedTable(String file, String digest, int rows) implements Event {
    /** Refuses a blank name or digest and negative rows. */
    public ImportedTable {
        Values.word("file", file);
        Values.word("digest", digest);
        Values.atLeast("rows", rows, 0);
    }

    @Override
    public EventKind kind() {
        return EventKind.IMPORTED_TABLE;
    }
}
