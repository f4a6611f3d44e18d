package coldproof.study;

/**
 * One thing wrong with a journal file, and where.
 *
 * @param line number of the line in the file, first is 1
 * @param byteOffset where it starts, bytes from the start of the file
 * @param kind what is wrong, a fixed word such as {@code line-damaged}
 * @param text one sentence for people, without the place
 * @param entriesLost how many entries cannot be read because of it, 0 or more
 */
public record JournalFlaw(int line, long byteOffset, String kind, String text, long entriesLost) {}
