package coldproof.face.cli;

import coldproof.face.dialogue.VerbDesk;
import java.io.BufferedReader;
import java.io.PrintWriter;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/** The verbs of the command line for the console. */
public final class CommandLineDesk implements VerbDesk {
    private final boolean colour;

    /** A desk whose answers may use colour, or may not. */
    public CommandLineDesk(boolean colour) {
        this.colour = colour;
    }

    @Override
    public List<Entry> verbs() {
        List<Entry> entries = new ArrayList<>();
        for (VerbEntry verb : Verbs.all()) {
            entries.add(new Entry(verb.name(), verb.purpose(), verb.example()));
        }
        return entries;
    }

    @Override
    public List<Option> options(String verb) {
        return Verbs.find(verb).map(CommandLineDesk::options).orElse(List.of());
    }

    private static List<Option> options(VerbEntry entry) {
        CommandSpec spec = CommandLineFace.spec(entry, entry.verb());
        List<Option> options = new ArrayList<>();
        for (OptionSpec option : spec.options()) {
            options.add(new Option(option.longestName(), option.arity().max() == 0 ? "" : option.paramLabel(), purpose(option.description())));
        }
        for (PositionalParamSpec argument : spec.positionalParameters()) {
            options.add(new Option("", argument.paramLabel(), purpose(argument.description())));
        }
        return options;
    }

    private static String purpose(String... description) {
        return String.join(" ", description).replace("%%", "%");
    }

    @Override
    public int run(List<String> words, PrintWriter out, PrintWriter err, int columns) {
        Streams streams = new Streams(new BufferedReader(new StringReader("")), out, err, false, columns, colour, true);
        return new CommandLineFace(streams).run(words.toArray(String[]::new));
    }
}
