package coldproof.job;

import coldproof.files.folder.StudyFolder;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.report.page.IndexPage;
import coldproof.report.page.StudyLine;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Makes one page of all studies in a folder. */
public final class IndexJob {
    private static final int DEPTH = 3; // folders below the one given: shelf, year, study
    private static final String PLAIN = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_~";

    private IndexJob() {}

    /**
     * What was made.
     *
     * @param file the page
     * @param studies what stands in it
     */
    public record Made(Path file, List<StudyLine> studies) {}

    /**
     * Writes an index of all studies in a folder, up to three folders down. A study that cannot be read is named with the reason. Links lead to
     * reports that lie in the study folders; none is made.
     *
     * @param folder where studies lie
     * @param format how it is written
     * @param out the file to write; empty: {@code index} with the ending of its format in the folder
     * @throws Refused if there is no study, or the file cannot be written
     */
    public static Made write(Path folder, ReportJob.Format format, Optional<Path> out) {
        List<StudyLine> studies = new ArrayList<>();
        for (Path study : studies(folder)) {
            studies.add(line(folder, study, format));
        }
        if (studies.isEmpty()) {
            throw new Refused(Problem.of("there is no study in this folder", Place.named(folder.toString()), "folders with a " + PlanFile.NAME + ", up to " + DEPTH + " folders down",
                    "Name the folder in which your studies lie."));
        }
        Path file = out.orElse(folder.resolve("index." + format.ending()));
        ReportJob.save(file, format.text(IndexPage.of(studies)));
        return new Made(file, studies);
    }

    /** Writes into the studies of a folder that their verdicts are looked at, and gives what to tell the person. */
    public static List<String> looks(Path folder, Machine machine) {
        List<String> said = new ArrayList<>();
        for (Path study : studies(folder)) {
            try {
                StudyView view = StudyView.read(study);
                LookRecord.write(view, VerdictJob.ofStudy(view), machine).forEach(look -> said.add(study + ": " + look));
            } catch (Refused unreadable) {
                continue; // nothing of it can be seen; the index says why
            }
        }
        return said;
    }

    private static List<Path> studies(Path folder) {
        try (Stream<Path> all = Files.walk(folder, DEPTH)) {
            return all.filter(Files::isDirectory).filter(path -> PlanFile.exists(path) || StudyFolder.hasJournal(path)).sorted().toList();
        } catch (IOException | UncheckedIOException failed) {
            throw new Refused(Problem.of("the folder cannot be read: " + failed.getMessage(), Place.named(folder.toString()), "a folder", "Check its name and its permissions."));
        }
    }

    private static StudyLine line(Path folder, Path study, ReportJob.Format format) {
        List<String> names = new ArrayList<>();
        folder.relativize(study).forEach(name -> names.add(name.toString()));
        names.removeIf(String::isEmpty);
        String below = String.join("/", names);
        try {
            StudyView view = StudyView.read(study);
            int trials = view.state().trials().size();
            StudyLine.Known known = new StudyLine.Known(view.plan(), VerdictJob.ofStudy(view).stream().map(VerdictJob.Answer::compared).toList(), trials,
                    view.sheet().positions().size(), view.state().simulated());
            names.add("report." + format.ending());
            boolean there = Files.isRegularFile(study.resolve("report." + format.ending()));
            return new StudyLine(below, there ? String.join("/", names.stream().map(IndexJob::encoded).toList()) : "", Optional.of(known), "");
        } catch (Refused refused) {
            return new StudyLine(below, "", Optional.empty(), refused.problems().get(0).what());
        }
    }

    /** Percent-encoding of a name in an address (RFC 3986, section 2). */
    private static String encoded(String name) {
        StringBuilder out = new StringBuilder();
        for (byte b : name.getBytes(StandardCharsets.UTF_8)) {
            char c = (char) (b & 0xff);
            out.append(PLAIN.indexOf(c) >= 0 || c == '.' && !out.isEmpty() ? String.valueOf(c) : String.format("%%%02X", (int) c));
        }
        return out.toString();
    }
}
