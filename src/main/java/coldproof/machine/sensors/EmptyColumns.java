package coldproof.machine.sensors;

import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;

/** Takes the columns out of a finished log in which no sensor ever gave a value: a heading without values would promise a channel. */
final class EmptyColumns {
    private EmptyColumns() {}

    /**
     * Writes the log anew beside itself and puts it in its place; the time is always kept.
     *
     * @param keep for each column after the time, whether it stays
     * @throws IOException if the file cannot be written; the log is then as it was
     */
    static void remove(Path file, List<Boolean> keep) throws IOException {
        if (!keep.contains(false)) {
            return;
        }
        Path anew = file.resolveSibling(file.getFileName() + ".part");
        try {
            copy(file, anew, keep);
            Files.move(anew, file, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(anew);
        }
    }

    private static void copy(Path file, Path anew, List<Boolean> keep) throws IOException {
        try (BufferedReader lines = Files.newBufferedReader(file); BufferedWriter out = Files.newBufferedWriter(anew)) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                String[] cells = line.split(",", -1); // no cell is quoted: headings have no commas, values are numbers
                List<String> kept = new ArrayList<>(List.of(cells[0]));
                for (int i = 1; i < cells.length; i++) {
                    if (keep.get(i - 1)) {
                        kept.add(cells[i]);
                    }
                }
                out.write(String.join(",", kept));
                out.write('\n');
            }
        }
    }
}
