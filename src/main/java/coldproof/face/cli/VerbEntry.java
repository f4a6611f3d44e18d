package coldproof.face.cli;

import java.util.function.Supplier;

/**
 * A line of the list of verbs.
 *
 * @param name the word typed
 * @param purpose what it does, in a line
 * @param example a call that works
 * @param verb makes it
 */
record VerbEntry(String name, String purpose, String example, Supplier<Verb> verb) {}
