package coldproof.face.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The pages that are packaged with the program lead to nothing that is left behind. */
class ShippedLinksTest {
    private static final Pattern LINK = Pattern.compile("\\]\\(([^)#]+)(?:#[^)]*)?\\)");
    private static final Pattern INCLUDES = Pattern.compile("fileset dir=\"\\$\\{basedir}\" includes=\"([^\"]+)\"");

    @ParameterizedTest
    @ValueSource(strings = {"README.md", "DEVELOPERS.md", "safety/README.md", "src/test/calibration/README.md", "src/test/calibration/rehearsal.md",
        "src/test/resources/coldproof/studies/README.md", "src/main/resources/coldproof/journal-format.md"})
    void everyLinkOfAPackagedPageIsPackaged(String page) throws IOException {
        List<String> packaged = INCLUDES.matcher(Files.readString(Path.of("pom.xml"))).results().flatMap(found -> Stream.of(found.group(1).split(","))).toList();
        assertTrue(isPackaged(packaged, Path.of(page)), page);
        Matcher links = LINK.matcher(Files.readString(Path.of(page)));
        while (links.find()) {
            if (!links.group(1).contains("://")) {
                Path target = Path.of(page).resolveSibling(links.group(1)).normalize();
                assertTrue(Files.exists(target) && isPackaged(packaged, target), page + " leads to " + target);
            }
        }
    }

    private static boolean isPackaged(List<String> patterns, Path file) {
        Path inside = Files.isDirectory(file) ? file.resolve("README.md") : file;
        return patterns.stream().anyMatch(pattern -> FileSystems.getDefault().getPathMatcher("glob:" + pattern).matches(inside));
    }
}
