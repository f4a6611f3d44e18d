package coldproof.job;

import coldproof.files.bench.BenchReader;
import coldproof.files.bench.BenchWriter;
import coldproof.quantity.Counted;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.rehearse.BenchFit;
import coldproof.reason.rehearse.bench.BenchSketch;
import coldproof.trace.TraceSummary;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A simulated bench on disk.
 *
 * @param file where it is
 * @param sketch what it says
 */
public record BenchFile(Path file, BenchSketch sketch) {
    /** The name of the bench in a study folder. */
    public static final String NAME = "bench.yaml";
    private static final long LARGEST_BYTES = 1L << 20;

    /** The bench of a study, where there is one. */
    public static Optional<BenchFile> of(Path study) {
        Path file = study.resolve(NAME);
        return Files.isRegularFile(file) ? Optional.of(read(file)) : Optional.empty();
    }

    /**
     * Reads a bench.
     *
     * @throws Refused if it cannot be read, or is wrong
     */
    public static BenchFile read(Path file) {
        try {
            if (Files.size(file) > LARGEST_BYTES) {
                throw refused(file, "the file is larger than any bench", "at most 1 MiB", "Check that this is the right file.");
            }
            return new BenchFile(file, BenchReader.read(file.toString(), Files.readString(file)));
        } catch (IOException failed) {
            throw refused(file, "the bench cannot be read: " + failed.getMessage(), "a file of UTF-8 text", "Check the name and the permissions.");
        }
    }

    /**
     * Fits a bench to traces of a pilot and writes it into the study.
     *
     * @param device what is tested
     * @param traces logs of baseline trials
     * @param airCelsius air of the traces, where they do not have it
     * @throws Refused if a trace cannot be read, none tells enough, or the file cannot be written
     */
    public static BenchFile learn(Path study, String device, List<Path> traces, OptionalDouble airCelsius) {
        List<TraceSummary> summaries = traces.stream().map(trace -> TraceJob.run(trace, List.of(), airCelsius, bytes -> {}).summary()).toList();
        Path file = study.resolve(NAME);
        BenchSketch sketch;
        try {
            sketch = BenchFit.of(device, summaries);
            sketch.parameters();
        } catch (IllegalArgumentException notEnough) {
            throw refused(traces.get(0), "no bench can be fitted: " + notEnough.getMessage(), "traces with package power, clock and die temperature",
                    "Log these channels, or write " + NAME + " by hand.");
        }
        try {
            Files.write(file, BenchWriter.text(sketch, "SIMULATED bench, fitted to " + Counted.of(traces.size(), "trace")
                    + "; limits that were not met are guesses").getBytes(StandardCharsets.UTF_8));
        } catch (IOException failed) {
            throw refused(file, "the bench cannot be written: " + failed.getMessage(), "a folder that can be written to", "Nothing was rehearsed.");
        }
        return new BenchFile(file, sketch);
    }

    private static Refused refused(Path file, String what, String expected, String remedy) {
        return new Refused(Problem.of(what, Place.named(file.toString()), expected, remedy));
    }
}
