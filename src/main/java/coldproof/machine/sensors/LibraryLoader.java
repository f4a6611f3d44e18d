package coldproof.machine.sensors;

import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Loads the library of system information, and the one class that calls it, from the folder {@code sensors} beside the program's jar. Its jars
 * are not on the class path, since Java would open them at every start of every verb.
 */
final class LibraryLoader extends URLClassLoader {
    private static final String ROOM = "coldproof.machine.library.";
    private static final String ADAPTER = ROOM + "OshiLibrary";
    private static final String LIBRARY = "oshi.SystemInfo";
    private static final String FOLDER = "sensors";

    private LibraryLoader(URL[] jars) {
        super("sensors", jars, LibraryLoader.class.getClassLoader());
    }

    /** The library, opened once in a process: a second native part would stay beside the first. */
    static SystemLibrary open() throws LibraryUnavailable {
        return Opened.ONCE.get();
    }

    /** Made when first asked for. */
    private static final class Opened {
        static final Opened ONCE = new Opened();

        private SystemLibrary library;
        private LibraryUnavailable unavailable;

        private Opened() {
            try {
                library = load();
            } catch (LibraryUnavailable not) {
                unavailable = not;
            }
        }

        SystemLibrary get() throws LibraryUnavailable {
            if (unavailable != null) {
                throw unavailable;
            }
            return library;
        }
    }

    private static SystemLibrary load() throws LibraryUnavailable {
        try {
            return (SystemLibrary) Class.forName(ADAPTER, true, loader()).getConstructor().newInstance();
        } catch (ReflectiveOperationException | IOException | RuntimeException | LinkageError failed) {
            Throwable cause = failed.getCause() == null ? failed : failed.getCause();
            throw new LibraryUnavailable(firstLine(cause), failed);
        }
    }

    /** The first line of a message: those of native parts go on for many. */
    static String firstLine(Throwable failed) {
        String message = failed.getMessage() == null || failed.getMessage().isBlank() ? failed.getClass().getSimpleName() : failed.getMessage();
        return message.strip().lines().findFirst().orElseThrow();
    }

    private static ClassLoader loader() throws IOException {
        ClassLoader ours = LibraryLoader.class.getClassLoader();
        if (ours.getResource(LIBRARY.replace('.', '/') + ".class") != null) {
            return ours;
        }
        Path program;
        try {
            program = Path.of(LibraryLoader.class.getProtectionDomain().getCodeSource().getLocation().toURI());
        } catch (java.net.URISyntaxException strange) {
            throw new IOException("the program's own jar cannot be found", strange);
        }
        List<URL> jars = new ArrayList<>(List.of(program.toUri().toURL()));
        Path folder = program.resolveSibling(FOLDER);
        if (!Files.isDirectory(folder)) {
            throw new IOException("its folder is missing: " + folder);
        }
        try (DirectoryStream<Path> inside = Files.newDirectoryStream(folder, "*.jar")) {
            for (Path jar : inside) {
                jars.add(jar.toUri().toURL());
            }
        }
        return new LibraryLoader(jars.toArray(URL[]::new));
    }

    /** The class that calls the library is found here, where the library is; everything else of ours where it always is. */
    @Override
    protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
        if (!name.startsWith(ROOM)) {
            return super.loadClass(name, resolve);
        }
        synchronized (getClassLoadingLock(name)) {
            Class<?> known = findLoadedClass(name);
            return known == null ? findClass(name) : known;
        }
    }
}
