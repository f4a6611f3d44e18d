package coldproof.study;

/**
 * An event together with the entry number it has: for the lists of a {@link StudyState}.
 *
 * @param <E> the kind of event
 * @param sequence the entry
 * @param event what it says
 */
public record Numbered<E extends Event>(long sequence, E event) {}
