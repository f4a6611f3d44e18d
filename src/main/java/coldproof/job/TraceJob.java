package coldproof.job;

import coldproof.files.table.LogHead;
import coldproof.files.table.LogReader;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.trace.Channel;
import coldproof.trace.ChannelGuess;
import coldproof.trace.ChannelMap;
import coldproof.trace.Series;
import coldproof.trace.TraceAccumulator;
import coldproof.trace.TraceSummaries;
import coldproof.trace.TraceSummary;
import coldproof.trace.TraceUnit;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.LongConsumer;

/** Reads one log of telemetry and summarises it. */
public final class TraceJob {
    static final String MAP_OPTION = "--map";

    private TraceJob() {}

    /**
     * What was read and what it says.
     *
     * @param file the log
     * @param series the log in memory, for plots
     * @param summary what it says
     */
    public record Result(Path file, Series series, TraceSummary summary) {}

    /**
     * Reads and summarises a log.
     *
     * @param file the log, plain or packed with gzip
     * @param mappings what the person set, each {@code channel=column} or {@code channel=column [unit]}; the rest is guessed
     * @param airCelsius air around the device where the log does not have it, or shall not be believed
     * @param bytesRead told now and then how many bytes were read
     * @throws Refused if the file cannot be read, a mapping names no channel or no column, or there is no column of time
     */
    public static Result run(Path file, List<String> mappings, OptionalDouble airCelsius, LongConsumer bytesRead) {
        LogHead head = LogReader.head(file);
        ChannelMap map = map(head, mappings);
        TraceAccumulator accumulator = new TraceAccumulator(map);
        LogReader.scan(file, head, map.wanted(), accumulator, bytesRead);
        Series series = accumulator.series();
        TraceSummary summary = TraceSummaries.summarise(series, airCelsius)
                .orElseThrow(() -> new Refused(Problem.of("holds " + series.size() + " usable rows", Place.named(file.toString()),
                        "at least three rows with a time and a number", "Check that the log was written to its end.")));
        return new Result(file, series, summary);
    }

    /**
     * The same for a log that may belong to a study: one that lies in its folder is read by the columns the study remembers, and what the
     * person sets for it is remembered once the log was read by it.
     *
     * @param study a folder, which need not hold a study
     */
    public static Result ofStudy(Path study, Path file, List<String> mappings, OptionalDouble airCelsius, LongConsumer bytesRead) {
        boolean belongs = Files.exists(study.resolve(PlanFile.NAME)) && absolute(file).startsWith(absolute(study));
        if (!belongs) {
            return run(file, mappings, airCelsius, bytesRead);
        }
        if (mappings.isEmpty()) {
            return RememberedColumns.reading(study, remembered -> run(file, remembered, airCelsius, bytesRead));
        }
        Result result = run(file, mappings, airCelsius, bytesRead);
        RememberedColumns.remember(study, mappings);
        return result;
    }

    private static Path absolute(Path path) {
        return path.toAbsolutePath().normalize();
    }

    /** Size of a log in bytes, to tell how far its reading is; 0 when it cannot be told, or is packed. */
    public static long bytes(Path file) {
        return LogReader.plainBytes(file);
    }

    private static ChannelMap map(LogHead head, List<String> mappings) {
        List<ChannelGuess.Setting> settings = new ArrayList<>();
        List<Problem> problems = new ArrayList<>();
        for (String mapping : mappings) {
            try {
                settings.add(setting(head, mapping));
            } catch (Refused refused) {
                problems.addAll(refused.problems());
            }
        }
        if (!problems.isEmpty()) {
            throw new Refused(problems);
        }
        return ChannelGuess.of(head.columns(), settings).orElseThrow(() -> new Refused(Problem.of(
                "no column of " + head.name() + " is a time that rises", Place.named(head.name()), "a column of seconds, times of day or dates",
                "Name it: " + MAP_OPTION + " time=COLUMN, with one of: " + String.join(", ", head.names()))));
    }

    private static ChannelGuess.Setting setting(LogHead head, String mapping) {
        int equals = mapping.indexOf('=');
        if (equals <= 0) {
            throw new Refused(Problem.of("\"" + mapping + "\" has no equals sign", Place.named(MAP_OPTION), "channel=column, such as power=P2",
                    "Write the channel, an equals sign, and the heading of the column."));
        }
        String word = mapping.substring(0, equals);
        Channel channel = Channel.named(word).orElseThrow(() -> new Refused(new Problem("no channel is called \"" + word + "\"",
                Place.named(MAP_OPTION), "one of: " + String.join(", ", Channel.shortWords()), Channel.nearest(word), "Correct the word.")));
        String column = mapping.substring(equals + 1).strip();
        List<Integer> found = head.find(column);
        Optional<TraceUnit> unit = Optional.empty();
        int bracket = column.lastIndexOf('[');
        if (bracket > 0) {
            unit = TraceUnit.named(column.substring(bracket)).filter(named -> named.kind() == channel.kind());
            List<Integer> bare = unit.isPresent() ? head.find(column.substring(0, bracket)) : List.of();
            found = bare.isEmpty() ? found : bare;
        }
        if (found.size() != 1) {
            throw new Refused(wrongColumn(head, column, found));
        }
        return new ChannelGuess.Setting(found.get(0), channel, unit);
    }

    private static Problem wrongColumn(LogHead head, String column, List<Integer> found) {
        if (found.isEmpty()) {
            return new Problem(head.name() + " has no column \"" + column + "\"", Place.named(MAP_OPTION),
                    "one of its columns: " + String.join(", ", head.names()), coldproof.quantity.NearestWord.of(column, head.names()),
                    "Give the name as it stands in the heading.");
        }
        String first = head.names().get(found.get(0));
        return Problem.of(head.name() + " has " + found.size() + " columns that \"" + column + "\" may mean", Place.named(MAP_OPTION),
                "the name of one column", "Write " + first + "#1 for the first of them, " + first + "#2 for the second, and so on.");
    }
}
