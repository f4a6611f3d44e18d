package coldproof.face.cli;

import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/** Options as the verbs describe them; all values arrive as text, units are read by {@link Invocation}. */
final class Options {
    /** What {@code --elsewhere} does, for every verb that writes entries. */
    static final String ELSEWHERE = "Where to go on when the study cannot be written: a new file on another medium, made only then; "
            + "journal merge brings it in later.";

    private Options() {}

    /** The parser takes descriptions for format strings. */
    private static String plain(String purpose) {
        return purpose.replace("%", "%%");
    }

    /** An option with a value. */
    static void value(CommandSpec spec, String name, String label, String purpose) {
        spec.addOption(OptionSpec.builder(name).paramLabel(label).type(String.class).description(plain(purpose)).build());
    }

    /** An option whose value may be left out; it is empty then. */
    static void valueOrNone(CommandSpec spec, String name, String label, String purpose) {
        spec.addOption(OptionSpec.builder(name).paramLabel(label).type(String.class).arity("0..1").fallbackValue("").description(plain(purpose)).build());
    }

    /** An option that may stand several times. */
    static void values(CommandSpec spec, String name, String label, String purpose) {
        spec.addOption(OptionSpec.builder(name).paramLabel(label).type(List.class).auxiliaryTypes(String.class).arity("1").description(plain(purpose)).build());
    }

    /** A switch. */
    static void flag(CommandSpec spec, String name, String purpose) {
        spec.addOption(OptionSpec.builder(name).type(boolean.class).description(plain(purpose)).build());
    }

    /** A switch that the program gives itself. */
    static void hiddenFlag(CommandSpec spec, String name, String purpose) {
        spec.addOption(OptionSpec.builder(name).type(boolean.class).hidden(true).description(plain(purpose)).build());
    }

    /** Arguments without a name; at least one must be there where the arity does not begin with 0, and {@link CommandLineFace} lets in no more than it ends with. */
    static void arguments(CommandSpec spec, String label, String arity, String purpose) {
        spec.addPositional(PositionalParamSpec.builder().paramLabel(label).type(List.class).auxiliaryTypes(String.class).arity(arity)
                .required(!arity.startsWith("0")).description(plain(purpose)).build());
    }

    /** What every verb takes. */
    static void common(CommandSpec spec) {
        flag(spec, "--json", "One JSON document on standard output and nothing else.");
        value(spec, "--study", "DIR", "The study folder (default: the current folder).");
        flag(spec, "--no-color", "Plain text without colour.");
        spec.addOption(OptionSpec.builder("--help", "-h").type(boolean.class).usageHelp(true).description("Show this help.").build());
    }
}
