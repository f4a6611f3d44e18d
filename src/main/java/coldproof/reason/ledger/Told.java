package coldproof.reason.ledger;

/** Whether two devices can be told apart. */
public enum Told {
    /** The interval lies above the reference. */
    FASTER("faster"),
    /** The interval lies below the reference. */
    SLOWER("slower"),
    /** The interval holds the reference: the difference may be noise. */
    CANNOT_TELL("cannot-tell"),
    /** A source does not state how sure its value is. */
    NOT_STATED("not-stated"),
    /** The reference itself. */
    REFERENCE("reference");

    private final String code;

    Told(String code) {
        this.code = code;
    }

    /** The word in JSON. */
    public String code() {
        return code;
    }
}
