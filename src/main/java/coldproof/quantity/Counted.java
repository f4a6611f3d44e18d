package coldproof.quantity;

/** A number with what it counts: {@code 1 trial}, {@code 3 trials}. */
public final class Counted {
    private Counted() {}

    /** With a noun that takes an s. */
    public static String of(long count, String noun) {
        return of(count, noun, noun + "s");
    }

    /** With the words for one and those for any other number: {@code 1 entry is}, {@code 0 entries are}. */
    public static String of(long count, String one, String many) {
        return count + " " + (count == 1 ? one : many);
    }
}
