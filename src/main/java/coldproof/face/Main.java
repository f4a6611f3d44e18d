package coldproof.face;

/** Where the program starts. */
public final class Main {
    private Main() {}

    /** Starts the program and ends it with the status of the verb. */
    public static void main(String[] arguments) {
        System.exit(0);
    }
}
