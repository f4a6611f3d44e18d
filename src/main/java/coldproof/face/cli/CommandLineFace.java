package coldproof.face.cli;

import coldproof.face.dialogue.Screens;
import coldproof.quantity.NearestWord;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.report.json.ProblemJson;
import coldproof.report.text.ProblemText;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;

/** Finds the verb, reads its options, runs it, and turns what went wrong into a message and a status. */
public final class CommandLineFace {
    private final Streams streams;
    private final Optional<Screens> screens;

    /** A face on these streams. */
    public CommandLineFace(Streams streams) {
        this(streams, Optional.empty());
    }

    /** A face on these streams, with talks that use the whole screen. */
    public CommandLineFace(Streams streams, Optional<Screens> screens) {
        this.streams = streams;
        this.screens = screens;
    }

    /**
     * Runs one call.
     *
     * @param arguments the words after the program's name, at least one
     * @return the exit status
     */
    public int run(String... arguments) {
        boolean json = Arrays.asList(arguments).contains("--json");
        try {
            return written(dispatch(arguments));
        } catch (Refused refused) {
            return refuse(refused.problems(), json);
        } catch (OutOfMemoryError | StackOverflowError exhausted) {
            streams.err().println("coldproof: out of memory; what was recorded is on disk. Give Java more with JAVA_TOOL_OPTIONS=-Xmx2g.");
            return ExitStatus.FAILED;
        } catch (RuntimeException unforeseen) {
            return unforeseen(unforeseen);
        } finally {
            streams.out().flush();
            streams.err().flush();
        }
    }

    /** The status, unless the answer did not get out: a script that reads PASS must have the verdict too. */
    private int written(int status) {
        if (!streams.out().checkError()) {
            return status;
        }
        streams.err().println("coldproof: the answer could not be written in full: standard output is full or was closed. What was recorded is on disk.");
        return ExitStatus.FAILED;
    }

    /** Whether the call walks the usual paths for the archive of classes. */
    public static boolean walks(String... arguments) {
        return arguments[0].equals("warm") && Arrays.asList(arguments).contains(WarmVerb.WALK);
    }

    private int unforeseen(RuntimeException unforeseen) {
        streams.err().println("coldproof: something unforeseen went wrong: " + unforeseen);
        streams.err().println("  What was recorded is on disk. Please report this with the call that led to it.");
        if (System.getenv("COLDPROOF_DEBUG") != null) {
            unforeseen.printStackTrace(streams.err());
        }
        return ExitStatus.FAILED;
    }

    private int refuse(List<Problem> problems, boolean json) {
        streams.err().print(streams.interactive() ? ProblemText.of(problems, streams.columns()) : ProblemText.of(problems));
        if (json) {
            streams.out().println(ProblemJson.of(problems).toText());
        }
        return ExitStatus.WRONG_INPUT;
    }

    private int dispatch(String[] arguments) {
        String first = arguments[0];
        if (first.equals("--help") || first.equals("-h") || first.equals("help")) {
            return help(Arrays.copyOfRange(arguments, 1, arguments.length));
        }
        if (first.equals("--version") || first.equals("-V")) {
            streams.out().println("coldproof " + version());
            return ExitStatus.DONE;
        }
        int verbAt = positionOfVerb(arguments);
        String name = arguments[verbAt];
        VerbEntry entry = Verbs.find(name).orElseThrow(() -> unknownVerb(name));
        List<String> rest = new ArrayList<>(Arrays.asList(arguments));
        rest.remove(verbAt);
        Verb verb = entry.verb();
        CommandSpec spec = spec(entry, verb);
        ParseResult parsed = parse(spec, rest, entry.name());
        if (parsed.isUsageHelpRequested()) {
            streams.out().print(usage(spec, entry));
            return ExitStatus.DONE;
        }
        return verb.run(new Invocation(parsed, streams, screens));
    }

    /** Common options may stand before the verb: {@code coldproof --study DIR verdict}. */
    private static int positionOfVerb(String[] arguments) {
        for (int i = 0; i < arguments.length; i++) {
            if (arguments[i].equals("--study")) {
                i++;
            } else if (!arguments[i].startsWith("-")) {
                return i;
            }
        }
        return 0;
    }

    static CommandSpec spec(VerbEntry entry, Verb verb) {
        CommandSpec spec = CommandSpec.create().name("coldproof " + entry.name());
        spec.usageMessage().description(entry.purpose().replace("%", "%%")).width(80);
        verb.describe(spec);
        Options.common(spec);
        spec.parser().overwrittenOptionsAllowed(false).abbreviatedOptionsAllowed(false);
        return spec;
    }

    private String usage(CommandSpec spec, VerbEntry entry) {
        return new CommandLine(spec).setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF)).getUsageMessage()
                + "Example:\n  " + entry.example() + "\n";
    }

    private ParseResult parse(CommandSpec spec, List<String> words, String verb) {
        CommandLine line = new CommandLine(spec);
        try {
            ParseResult parsed = line.parseArgs(words.toArray(new String[0]));
            for (PositionalParamSpec positional : spec.positionalParameters()) { // the parser begins the list anew where it is full
                List<String> taken = parsed.matchedPositionalValue(0, List.of());
                if (!positional.arity().isVariable() && taken.size() > positional.arity().max()) {
                    throw tooMany(verb, taken.get(positional.arity().max()));
                }
            }
            return parsed;
        } catch (UnmatchedArgumentException unmatched) {
            String word = unmatched.getUnmatched().get(0);
            if (!word.startsWith("-")) {
                throw tooMany(verb, word);
            }
            List<String> valid = spec.options().stream().map(option -> option.longestName()).toList();
            throw new Refused(new Problem("\"" + word + "\" is not an option of " + verb, Place.named(word), "one of: " + String.join(", ", valid),
                    NearestWord.of(word, valid), "Correct it, or see: coldproof " + verb + " --help"));
        } catch (ParameterException wrong) {
            throw new Refused(Problem.of(firstLine(wrong.getMessage()), Place.named("coldproof " + verb), "", "See: coldproof " + verb + " --help"));
        }
    }

    private static Refused tooMany(String verb, String word) {
        return Invocation.refused("coldproof " + verb, "\"" + word + "\" is one word too many", "no more words than its help names",
                "Leave it out, or put a text with blanks in quotes. See: coldproof " + verb + " --help");
    }

    private static String firstLine(String message) {
        int end = message.indexOf('\n');
        return end < 0 ? message : message.substring(0, end);
    }

    private static Refused unknownVerb(String name) {
        List<String> names = Verbs.names();
        return new Refused(new Problem("there is no verb \"" + name + "\"", Place.named("coldproof"), "one of: " + String.join(", ", names),
                NearestWord.of(name, names), "See: coldproof --help"));
    }

    private int help(String[] words) {
        if (words.length > 0) {
            VerbEntry entry = Verbs.find(words[0]).orElseThrow(() -> unknownVerb(words[0]));
            streams.out().print(usage(spec(entry, entry.verb()), entry));
            return ExitStatus.DONE;
        }
        streams.out().print(Verbs.overview());
        return ExitStatus.DONE;
    }

    static String version() {
        String version = CommandLineFace.class.getPackage().getImplementationVersion();
        return version == null ? "(unpackaged)" : version;
    }
}
