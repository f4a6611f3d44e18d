package coldproof.face.cli;

import java.io.BufferedReader;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.Writer;
import picocli.CommandLine.Model.CommandSpec;

/** Walks the usual paths, so that the archive made at package time holds their classes. Its answers go nowhere. */
final class WarmVerb implements Verb {
    @Override
    public void describe(CommandSpec spec) {}

    @Override
    public int run(Invocation call) {
        PrintWriter nowhere = new PrintWriter(Writer.nullWriter());
        Streams quiet = new Streams(new BufferedReader(new StringReader("")), nowhere, nowhere, false, 80, false);
        CommandLineFace face = new CommandLineFace(quiet);
        for (String[] words : WALKS) {
            face.run(words);
        }
        return ExitStatus.DONE;
    }

    private static final String[][] WALKS = {
        {"--help"}, {"--version"}, {"verdict", "--help"}, {"verdict", "--study", "no such folder", "--json"}, {"verdct"},
    };
}
