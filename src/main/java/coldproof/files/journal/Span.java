package coldproof.files.journal;

/**
 * Bytes of one physical line, without line feed.
 *
 * @param number line of the file, first is 1
 * @param from first byte
 * @param to after the last byte
 */
record Span(int number, int from, int to) {
    int length() {
        return to - from;
    }
}
