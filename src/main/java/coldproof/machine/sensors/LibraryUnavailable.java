package coldproof.machine.sensors;

/** The library of system information cannot be used here; the message says why, in a line. */
final class LibraryUnavailable extends Exception {
    private static final long serialVersionUID = 1L;

    LibraryUnavailable(String why, Throwable cause) {
        super(why, cause);
    }
}
