package coldproof.face.cli;

import picocli.CommandLine.Model.CommandSpec;

/** A verb of the command line. */
interface Verb {
    /** Adds the verb's own options and arguments. */
    void describe(CommandSpec spec);

    /**
     * Does it.
     *
     * @return the exit status
     * @throws coldproof.quantity.Refused for a mistake of the person
     */
    int run(Invocation call);
}
