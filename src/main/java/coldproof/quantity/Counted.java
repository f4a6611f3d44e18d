package coldproof.quantity;

/** A number with what it counts: {@code 1 trial}, {@code 3 trials}. */
public final class Counted {
    private Counted() {}

    /** With a noun that takes an s. */
    public static String of(long count, String noun) {
        return of(count, noun, noun + "s");
    }

    /** Degrees of freedom, of which there may be a part: {@code 1 degree of freedom}, {@code 6.4 degrees of freedom}. */
    public static String degreesOfFreedom(String number) {
        return number + (number.equals("1") ? " degree" : " degrees") + " of freedom";
    }

    /** With the words for one and those for any other number: {@code 1 entry is}, {@code 0 entries are}. */
    public static String of(long count, String one, String many) {
        return count + " " + (count == 1 ? one : many);
    }
}
