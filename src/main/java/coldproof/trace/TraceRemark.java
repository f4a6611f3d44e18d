package coldproof.trace;

/**
 * Something in a log that the person should know of.
 *
 * @param line line in the file, first is 1; 0 when it concerns the whole
 * @param text plain words
 */
public record TraceRemark(long line, String text) {}
