package coldproof.files.journal;

/**
 * One thing wrong with a journal file, and where.
 *
 * @param line number of the line in the file, first is 1
 * @param byteOffset where it starts, bytes from the start of the file
 * @param kind what is wrong
 * @param text one sentence for people, without the place
 * @param entriesLost how many entries could not be read because of it, 0 or more
 */
public record Damage(int line, long byteOffset, Kind kind, String text, long entriesLost) {
    /** What can be wrong. */
    public enum Kind {
        /** Bytes of the line were changed; its entry cannot be read. */
        LINE_DAMAGED,
        /** Bytes were changed, but the checksums prove what stood there: the entry is read. */
        LINE_RESTORED,
        /** The last line is cut short: a crash while it was written, or it is being written now. It was never acknowledged. */
        TORN_TAIL,
        /** The last line is whole but for its line break. */
        LINE_BREAK_MISSING,
        /** Whole lines are missing. */
        ENTRIES_MISSING,
        /** Entries that had been acknowledged are missing from the end. */
        END_MISSING,
        /** The file is not the one written here last: another copy was put in its place. */
        REPLACED,
        /** A line does not continue the one before it: one of them was replaced. */
        CHAIN_BROKEN,
        /** A line stands twice; it counts once. */
        LINE_REPEATED,
        /** A line stands in the wrong place; it is read where it belongs. */
        OUT_OF_PLACE,
        /** A line continues an earlier entry than the last: two copies of the journal were joined by hand. It is kept apart. */
        OTHER_BRANCH,
        /** No byte is wrong, but the content is not understood, most likely written by a newer version. */
        NOT_UNDERSTOOD,
        /** An empty line, a byte order mark or other line ends: another program has rewritten the file; the entries are intact. */
        REWRITTEN
    }
}
