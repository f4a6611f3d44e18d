package coldproof.face;

import coldproof.face.cli.CommandLineFace;
import coldproof.face.cli.Streams;
import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.Console;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.InputStreamReader;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** Where the program starts: with words it is a command line, without it is the console. */
public final class Main {
    private static final int WIDTH = 80;

    private Main() {}

    /** Starts the program and ends it with the status of the verb. */
    public static void main(String[] arguments) {
        // Every option arrives as text and is read by QuantityText: the parser need not look for converters of dates and databases.
        System.setProperty("picocli.converters.excludes", "java.*");
        PrintWriter out = writer(FileDescriptor.out);
        PrintWriter err = writer(FileDescriptor.err);
        boolean interactive = hasTerminal();
        boolean plain = System.getenv("NO_COLOR") != null || Arrays.asList(arguments).contains("--no-color");
        BufferedReader in = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        Streams streams = new Streams(in, out, err, interactive, WIDTH, interactive && !plain);
        int status = new CommandLineFace(streams).run(arguments.length == 0 ? new String[] {"--help"} : arguments);
        out.flush();
        err.flush();
        System.exit(status);
    }

    /** Since Java 22 there is a console without a terminal too, and a method that tells them apart. */
    private static boolean hasTerminal() {
        Console console = System.console();
        if (console == null) {
            return false;
        }
        try {
            return (boolean) Console.class.getMethod("isTerminal").invoke(console);
        } catch (NoSuchMethodException before22) {
            return true;
        } catch (ReflectiveOperationException unexpected) {
            throw new IllegalStateException("the console of this Java does not say whether it is a terminal", unexpected);
        }
    }

    private static PrintWriter writer(FileDescriptor descriptor) {
        return new PrintWriter(new BufferedWriter(new OutputStreamWriter(new FileOutputStream(descriptor), StandardCharsets.UTF_8)), false);
    }
}
