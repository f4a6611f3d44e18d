package coldproof.face.cli;

import java.util.Locale;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** The manual page in the macros of {@code man(7)}, from the same descriptions as the help. */
final class ManualPage {
    private final StringBuilder out = new StringBuilder();

    private ManualPage() {}

    /** The whole page. */
    static String of(String version) {
        ManualPage page = new ManualPage();
        page.macro("TH", "COLDPROOF", "1", "", "coldproof " + version, "");
        page.macro("SH", "NAME");
        page.text("coldproof - plan, record and judge a before-and-after test of a computer");
        page.macro("SH", "SYNOPSIS");
        page.text("coldproof [VERB [options]]");
        page.macro("SH", "DESCRIPTION");
        page.text("Without words it opens the console on the study in this folder. With a verb it does one thing.");
        for (VerbEntry entry : Verbs.all()) {
            page.verb(entry);
        }
        page.macro("SH", "EXIT STATUS");
        page.text("0 done or PASS, 10 FAIL, 11 UNDECIDED, 2 wrong usage or input, 1 anything else.");
        page.macro("SH", "SAFETY");
        page.text("Cautions shown are the usual ones. The maker's limits, local codes and licensed practice come first.");
        return page.out.toString();
    }

    private void verb(VerbEntry entry) {
        macro("SH", entry.name().toUpperCase(Locale.ROOT));
        text(entry.purpose() + ".");
        CommandSpec spec = CommandLineFace.spec(entry, entry.verb());
        spec.positionalParameters().forEach(this::argument);
        spec.options().forEach(this::argument);
        macro("PP");
        text("Example:");
        macro("PP");
        text(entry.example());
    }

    private void argument(ArgSpec argument) {
        macro("TP");
        String name = argument instanceof OptionSpec option ? String.join(", ", option.names()) : "";
        String label = argument.arity().max() == 0 ? "" : argument.paramLabel();
        out.append("\\fB").append(escaped(name)).append("\\fR").append(name.isEmpty() || label.isEmpty() ? "" : " ").append(escaped(label)).append('\n');
        text(String.join(" ", argument.description()));
    }

    private void macro(String name, String... words) {
        out.append('.').append(name);
        for (String word : words) {
            out.append(" \"").append(escaped(word)).append('"');
        }
        out.append('\n');
    }

    /** Text that no formatter can take for a request. */
    private void text(String text) {
        String line = escaped(text);
        out.append(line.startsWith(".") || line.startsWith("'") ? "\\&" : "").append(line).append('\n');
    }

    private static String escaped(String text) {
        return text.replace("\\", "\\e").replace("-", "\\-");
    }
}
