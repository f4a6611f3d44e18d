package coldproof.face.cli;

/** Exit statuses scripts rely on. */
public final class ExitStatus {
    /** Done, or PASS. */
    public static final int DONE = 0;
    /** Something unforeseen. */
    public static final int FAILED = 1;
    /** Wrong usage or input. */
    public static final int WRONG_INPUT = 2;
    /** A verdict: FAIL. */
    public static final int FAIL = 10;
    /** A verdict: UNDECIDED. */
    public static final int UNDECIDED = 11;

    private ExitStatus() {}
}
