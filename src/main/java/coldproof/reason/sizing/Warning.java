package coldproof.reason.sizing;

/**
 * Something to know before going to the bench.
 *
 * @param code a fixed word for scripts
 * @param text a sentence for people
 */
public record Warning(String code, String text) {}
