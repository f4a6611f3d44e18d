package coldproof.face.cli;

/**
 * A line of the list of verbs.
 *
 * @param name the word typed
 * @param purpose what it does, in a line
 * @param example a call that works
 * @param verb does it; without state, so that making all of them costs nothing
 */
record VerbEntry(String name, String purpose, String example, Verb verb) {}
