package coldproof.files.journal;

/**
 * A line that was read, and where.
 *
 * @param number line of the file, first is 1
 * @param from where it starts, bytes from the start of the file
 * @param line what it says
 */
record Found(int number, int from, Line line) {
    long sequence() {
        return line.entry().sequence();
    }
}
