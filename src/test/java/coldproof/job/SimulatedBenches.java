package coldproof.job;

import coldproof.files.table.Table;
import coldproof.files.table.TableReader;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;

/** The simulated benches of the test resources: their data unpacked, their truths as tables. */
final class SimulatedBenches {
    private SimulatedBenches() {}

    private static InputStream resource(String name) {
        return SimulatedBenches.class.getResourceAsStream("/coldproof/benches/" + name);
    }

    /** A table of truths. */
    static Table truths(String name) throws IOException {
        try (InputStream in = resource(name)) {
            return TableReader.read(name, in.readAllBytes());
        }
    }

    /** Rows of a table of truths that concern a bench. */
    static List<Table.Row> of(Table truths, String bench) {
        return truths.rows().stream().filter(row -> row.text(0).equals(bench)).toList();
    }

    /** Unpacks a bench and gives its table of trials. */
    static Path unpack(String bench, Path folder) throws IOException {
        try (ZipInputStream in = new ZipInputStream(resource(bench + ".zip"))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                if (!entry.isDirectory()) {
                    Path file = folder.resolve(entry.getName());
                    Files.createDirectories(file.getParent());
                    Files.copy(in, file);
                }
            }
        }
        return folder.resolve("trials.csv");
    }

    /** Names of all benches. */
    static List<String> names() {
        String[] names = new String[20];
        Arrays.setAll(names, i -> String.format(Locale.ROOT, "bench-%02d", i + 1));
        return List.of(names);
    }
}
