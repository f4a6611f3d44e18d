package coldproof.machine;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.CodeSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The archive of loaded and checked classes that makes starting quick. It is good for one place of the jar and one Java only; elsewhere Java passes
 * over it without a word and starts slowly.
 */
public final class ClassArchive {
    private static final double MOST_SECONDS = 300;

    private ClassArchive() {}

    /** What came of it. */
    public enum Outcome {
        /** It lies beside the jar. */
        MADE,
        /** This Java makes none; the program works without. */
        NOT_MADE
    }

    /** The jar this program runs from; empty where it runs from loose classes. */
    public static Optional<Path> jar() {
        CodeSource source = ClassArchive.class.getProtectionDomain().getCodeSource();
        if (source == null) {
            return Optional.empty();
        }
        try {
            Path place = Path.of(source.getLocation().toURI());
            return Files.isRegularFile(place) ? Optional.of(place) : Optional.empty();
        } catch (URISyntaxException odd) {
            throw new IllegalStateException("the place of the program is no address: " + source.getLocation(), odd);
        }
    }

    /** Where the archive of a jar lies. */
    public static Path beside(Path jar) {
        return jar.resolveSibling("coldproof.jsa");
    }

    /**
     * Makes the archive with the Java that is running now: one run lists the classes of the usual paths, another writes them down.
     *
     * @param walk words after the jar that walk the usual paths
     * @throws IOException if the folder of the jar cannot be written or Java cannot be started
     * @throws InterruptedException if interrupted; nothing is changed then
     */
    public static Outcome make(Path jar, List<String> walk) throws IOException, InterruptedException {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        Path classes = Files.createTempFile("coldproof-classes", ".txt");
        Path fresh = Files.createTempFile(jar.getParent(), "coldproof", ".jsa");
        try {
            Files.delete(fresh); // Java writes no archive over a file that is there
            boolean listed = run(java, jar, List.of("-Xshare:off", "-XX:DumpLoadedClassList=" + classes), walk);
            // Only this collector writes the archived objects of the module graph.
            boolean written = listed && run(java, jar, List.of("-Xshare:dump", "-XX:+UseG1GC", "-XX:SharedClassListFile=" + classes,
                    "-XX:SharedArchiveFile=" + fresh), List.of());
            if (!written || !Files.exists(fresh)) {
                return Outcome.NOT_MADE;
            }
            Files.move(fresh, beside(jar), StandardCopyOption.REPLACE_EXISTING);
            return Outcome.MADE;
        } finally {
            Files.deleteIfExists(classes);
            Files.deleteIfExists(fresh);
        }
    }

    private static boolean run(String java, Path jar, List<String> options, List<String> words) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(java));
        command.addAll(options);
        command.addAll(List.of("-jar", jar.toString()));
        command.addAll(words);
        return WorkloadProcess.run(command, jar.getParent(), MOST_SECONDS, Optional::empty).exitCode() == 0;
    }
}
