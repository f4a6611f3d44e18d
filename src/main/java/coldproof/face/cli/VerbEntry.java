package coldproof.face.cli;

/**
 * A line of the list of verbs.
 *
 * @param name the word typed
 * @param purpose what it does, in a line
 * @param example a call that works
 */
record VerbEntry(String name, String purpose, String example) {
    /** Makes the verb. */
    Verb verb() {
        return Verbs.make(name);
    }
}
