package coldproof.files.journal;

/** Says that a line is not written as this version writes it, so that the general reader is to decide what it is. */
final class NotPlain extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    NotPlain(String what) {
        super(what);
    }
}
