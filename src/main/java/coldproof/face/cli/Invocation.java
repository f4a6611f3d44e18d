package coldproof.face.cli;

import coldproof.face.dialogue.Screens;
import coldproof.quantity.Dimension;
import coldproof.quantity.NearestWord;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.QuantityText;
import coldproof.quantity.QuantityText.Bare;
import coldproof.quantity.Refused;
import coldproof.report.json.JsonObject;
import coldproof.report.text.Figures;
import coldproof.report.text.Harmless;
import coldproof.report.text.Wrap;
import java.io.PrintWriter;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import picocli.CommandLine.ParseResult;

/** One call of a verb: its options with units read, and where the answer goes. */
final class Invocation {
    private final ParseResult parsed;
    private final Streams streams;
    private final Optional<Screens> screens;

    Invocation(ParseResult parsed, Streams streams, Optional<Screens> screens) {
        this.parsed = parsed;
        this.streams = streams;
        this.screens = screens;
    }

    /** Talks that use the whole screen, where there is one. */
    Optional<Screens> screens() {
        return screens;
    }

    boolean has(String option) {
        return parsed.hasMatchedOption(option);
    }

    Optional<String> text(String option) {
        return Optional.ofNullable(parsed.matchedOptionValue(option, (String) null));
    }

    String need(String option, String example) {
        Optional<String> text = text(option);
        if (text.isEmpty()) {
            throw refused(option, "it is missing", example, "Add " + option + " " + example + ".");
        }
        return text.get();
    }

    List<String> texts(String option) {
        return parsed.matchedOptionValue(option, List.<String>of());
    }

    List<String> arguments() {
        return parsed.matchedPositionalValue(0, List.<String>of());
    }

    boolean flag(String option) {
        return parsed.matchedOptionValue(option, Boolean.FALSE);
    }

    boolean json() {
        return flag("--json");
    }

    Path study() {
        return path("--study").orElse(Path.of(""));
    }

    Optional<Path> path(String option) {
        Optional<String> text = text(option);
        return text.isEmpty() ? Optional.empty() : Optional.of(pathOf(option, text.get()));
    }

    static Path pathOf(String what, String text) {
        try {
            return Path.of(text);
        } catch (InvalidPathException broken) {
            throw refused(what, "\"" + text + "\" is no file name here", "a file or folder name", "Correct the name.");
        }
    }

    OptionalDouble quantity(String option, Dimension dimension) {
        Optional<String> text = text(option);
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        try {
            return OptionalDouble.of(QuantityText.read(text.get(), dimension, Bare.ALLOWED));
        } catch (QuantityText.Unreadable unreadable) {
            throw refused(option, "\"" + text.get() + "\" is " + reason(unreadable), dimension.expected(), "Correct the value of " + option + ".");
        }
    }

    /** A percentage inside the open interval; the default where the option is not given. */
    double percentBetween(String option, double low, double high, double otherwise) {
        double percent = quantity(option, Dimension.PERCENT).orElse(otherwise);
        if (!(percent > low && percent < high)) {
            throw refused(option, Figures.given(percent) + " is out of range",
                    (low < 0 ? "0 % or more" : "above " + Figures.given(low)) + " and below " + Figures.given(high), "Correct the value of " + option + ".");
        }
        return percent;
    }

    /** A quantity above 0, where the option is given. */
    OptionalDouble above0(String option, Dimension dimension) {
        OptionalDouble value = quantity(option, dimension);
        if (value.isPresent() && !(value.getAsDouble() > 0)) {
            throw refused(option, "\"" + text(option).orElse("") + "\" is not above 0", dimension.expected(), "Correct the value of " + option + ".");
        }
        return value;
    }

    /**
     * Refuses options that say how a table is to be read or judged where there is no table: a study is judged by its plan, and what was asked
     * for would pass unheard.
     */
    void onlyWithTable(String... options) {
        refuseUnheard(List.of(options), "it goes with a table of trials; a study is read as its plan says", "--trials FILE beside it",
                "Leave it out, or name a table: coldproof journal export writes this study's.");
    }

    /** Refuses the first of these options that is given: nothing would come of it. */
    void refuseUnheard(List<String> options, String what, String expected, String remedy) {
        for (String option : options) {
            if (has(option)) {
                throw refused(option, what, expected, remedy);
            }
        }
    }

    private static String reason(QuantityText.Unreadable unreadable) {
        int colon = unreadable.getMessage().indexOf(": expected");
        return colon < 0 ? unreadable.getMessage() : unreadable.getMessage().substring(0, colon);
    }

    OptionalInt whole(String option, int smallest, int largest) {
        Optional<String> text = text(option);
        if (text.isEmpty()) {
            return OptionalInt.empty();
        }
        OptionalInt number = QuantityText.whole(text.get(), smallest, largest);
        if (number.isEmpty()) {
            throw refused(option, "\"" + text.get() + "\" does not do", "a whole number from " + smallest + " to " + largest, "Correct the value of " + option + ".");
        }
        return number;
    }

    double number(String option, double otherwise) {
        Optional<String> text = text(option);
        if (text.isEmpty()) {
            return otherwise;
        }
        try {
            return QuantityText.number(text.get());
        } catch (QuantityText.Unreadable unreadable) {
            throw refused(option, "\"" + text.get() + "\" is " + unreadable.getMessage(), "a number", "Correct the value of " + option + ".");
        }
    }

    String word(String option, List<String> valid, String otherwise) {
        String word = text(option).orElse(otherwise);
        if (!valid.contains(word)) {
            throw wrongWord(option, word, valid);
        }
        return word;
    }

    static Refused wrongWord(String what, String word, List<String> valid) {
        return new Refused(new Problem("\"" + word + "\" is not a word for it", Place.named(what), "one of: " + String.join(", ", valid),
                NearestWord.of(word, valid), "Correct the word."));
    }

    static Refused refused(String option, String what, String expected, String remedy) {
        return new Refused(Problem.of(what, Place.named(option), expected, remedy));
    }

    /** The line that says what comes next, ended; empty where the console says it. */
    String next(String words) {
        return streams.console() ? "" : Wrap.at(streams.columns(), "Next: " + words);
    }

    /** Writes the JSON document when asked for it, else the text; the other one is not made. */
    void answer(Supplier<JsonObject> json, Supplier<String> text) {
        if (json()) {
            answer(json.get());
        } else {
            answer(text.get());
        }
    }

    /** Writes the JSON document. */
    void answer(JsonObject json) {
        streams.out().println(json.toText());
        streams.out().flush();
    }

    /** Writes the text. */
    void answer(String text) {
        streams.out().print(text);
        streams.out().flush();
    }

    /** Where progress and remarks go. */
    PrintWriter messages() {
        return streams.err();
    }

    /** Says something beside the answer. */
    void remark(List<String> remarks) {
        remarks.forEach(remark -> messages().print(Wrap.at(streams.columns(), Harmless.line(remark))));
        messages().flush();
    }

    Streams streams() {
        return streams;
    }
}
