package coldproof.face;

import coldproof.face.cli.CommandLineDesk;
import coldproof.face.cli.CommandLineFace;
import coldproof.face.cli.Streams;
import coldproof.face.console.Console;
import coldproof.face.console.ConsoleWalk;
import coldproof.face.console.TerminalConsole;
import coldproof.face.dialogue.Lines;
import coldproof.face.dialogue.Screens;
import coldproof.job.LogJob;
import coldproof.job.Machine;
import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.InputStreamReader;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Where the program starts: with words it is a command line, without it is the console. */
public final class Main {
    private static final List<String> CONSOLE_OPTIONS = List.of("--no-color", "--plain");

    private Main() {}

    /** Starts the program and ends it with the status of the verb. */
    public static void main(String[] arguments) {
        // Every option arrives as text and is read by QuantityText: the parser need not look for converters of dates and databases.
        System.setProperty("picocli.converters.excludes", "java.*");
        // Without this the parser looks for a scripting language's class, which opens and searches every jar.
        System.setProperty("picocli.disable.closures", "true");
        PrintWriter out = writer(FileDescriptor.out);
        PrintWriter err = writer(FileDescriptor.err);
        boolean interactive = hasTerminal();
        boolean colour = interactive && System.getenv("NO_COLOR") == null && !Arrays.asList(arguments).contains("--no-color");
        BufferedReader in = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        int columns = Streams.columns(interactive, Optional.ofNullable(System.getenv("COLUMNS")));
        int status;
        Optional<Path> opened = opened(arguments);
        if (opened.isPresent()) {
            boolean plain = Arrays.asList(arguments).contains("--plain");
            status = interactive ? TerminalConsole.run(new CommandLineDesk(colour), Machine.atHand(), opened.get(), out, columns, colour, plain)
                    : Console.piped(new CommandLineDesk(false), Machine.atHand(), opened.get(), Lines.of(in, out, columns, false));
        } else {
            Optional<Screens> screens = interactive ? Optional.of(new LateScreens(colour)) : Optional.empty();
            status = new CommandLineFace(new Streams(in, out, err, interactive, columns, colour), screens).run(arguments);
            if (CommandLineFace.walks(arguments)) {
                ConsoleWalk.walk(new CommandLineDesk(false), Machine.atHand());
            }
        }
        out.flush();
        err.flush();
        System.exit(status);
    }

    /** The folder on which the console opens: no verb among the words, only options of the console. */
    private static Optional<Path> opened(String[] arguments) {
        Path folder = Path.of("");
        for (int i = 0; i < arguments.length; i++) {
            if (arguments[i].equals("--study") && i + 1 < arguments.length) {
                i++;
                folder = Path.of(arguments[i]);
            } else if (!CONSOLE_OPTIONS.contains(arguments[i])) {
                return Optional.empty();
            }
        }
        return Optional.of(folder);
    }

    /** Since Java 22 there is a console without a terminal too, and a method that tells them apart. */
    private static boolean hasTerminal() {
        java.io.Console console = System.console();
        if (console == null) {
            return false;
        }
        try {
            return (boolean) java.io.Console.class.getMethod("isTerminal").invoke(console);
        } catch (NoSuchMethodException before22) {
            return true;
        } catch (ReflectiveOperationException unexpected) {
            throw new IllegalStateException("the console of this Java does not say whether it is a terminal", unexpected);
        }
    }

    /** Loads the screen's classes only when a talk begins; no lambda, because every call of a verb would pay for it at the start. */
    private record LateScreens(boolean colour) implements Screens {
        @Override
        public void log(LogJob log) {
            TerminalConsole.screens(colour).log(log);
        }
    }

    private static PrintWriter writer(FileDescriptor descriptor) {
        return new PrintWriter(new BufferedWriter(new OutputStreamWriter(new FileOutputStream(descriptor), StandardCharsets.UTF_8)), false);
    }
}
