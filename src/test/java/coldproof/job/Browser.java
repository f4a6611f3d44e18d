package coldproof.job;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** A browser on this machine without a window, if there is one: COLDPROOF_BROWSER, else one of the usual names on the path. */
final class Browser {
    private final String program;
    private final Path scratch;

    /** What a run left: what it wrote, and what it complained of. */
    record Run(String out, String err) {}

    private Browser(String program, Path scratch) {
        this.program = program;
        this.scratch = scratch;
    }

    static Optional<Browser> find(Path scratch) {
        Stream<String> named = Stream.ofNullable(System.getenv("COLDPROOF_BROWSER"));
        Stream<String> usual = Arrays.stream(System.getenv("PATH").split(File.pathSeparator)).flatMap(folder -> Stream.of("chromium", "chromium-browser").map(name -> folder + "/" + name));
        return Stream.concat(named, usual).filter(file -> Files.isExecutable(Path.of(file))).findFirst().map(file -> new Browser(file, scratch));
    }

    Run run(Path page, int width, boolean dark, String... more) throws IOException, InterruptedException {
        List<String> words = new ArrayList<>(List.of(program, "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--enable-logging=stderr",
                "--user-data-dir=" + scratch.resolve("browser"), "--window-size=" + width + ",900"));
        if (dark) {
            words.add("--blink-settings=preferredColorScheme=0");
        }
        words.addAll(List.of(more));
        words.add(page.toUri().toString());
        Path out = scratch.resolve("browser.out");
        Path err = scratch.resolve("browser.err");
        Process process = new ProcessBuilder(words).redirectOutput(out.toFile()).redirectError(err.toFile()).start();
        if (!process.waitFor(120, TimeUnit.SECONDS)) {
            process.destroyForcibly();
            throw new IOException("the browser did not end within two minutes");
        }
        return new Run(Files.readString(out), new String(Files.readAllBytes(err), StandardCharsets.ISO_8859_1));
    }
}
