package coldproof.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.quantity.Refused;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class IndexJobTest {
    @TempDir
    Path folder;

    private String index(ReportJob.Format format) throws Exception {
        return Files.readString(IndexJob.write(folder, format, Optional.empty()).file());
    }

    /** Links as RFC 3986 wants them lead back to the files, whatever the folders are called. */
    @Test
    void everyStudyIsThereAndItsLinkLeadsToItsReport() throws Exception {
        for (String name : new String[] {"first", "a b & <c>", "jahr/größe 100 %", ".hidden?#"}) {
            ReportJob.write(BenchFixture.study(folder.resolve(name), ReadyPlans.text("fan-alternating"), BenchFixture.gain("fan", "maximum", 5)));
        }
        String page = index(ReportJob.Format.HTML);
        DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(folder.resolve("index.html").toFile());
        Matcher link = Pattern.compile("<a href=\"([^#\"][^\"]*)\">").matcher(page);
        int links = 0;
        while (link.find()) {
            links++;
            assertTrue(Files.isRegularFile(Path.of(folder.toUri().resolve(URI.create(link.group(1))))), link.group(1));
        }
        assertEquals(4, links);
        assertTrue(page.contains("Changes found") && page.contains("SIMULATED DATA"));
    }

    @Test
    void aStudyThatCannotBeReadIsNamedWithTheReason() throws Exception {
        Files.createDirectories(folder.resolve("broken"));
        Files.writeString(folder.resolve("broken/plan.yaml"), "coldproof: 1\ntitle: x\n");
        PlanJob.create(folder.resolve("fresh"), ReadyPlans.text("chilled-air"));
        for (ReportJob.Format format : ReportJob.Format.values()) {
            String page = index(format);
            assertTrue(page.contains("NOT READ") && page.contains("NOT BEGUN"), page);
            assertFalse(page.contains(folder.toString()), page);
        }
    }

    @Test
    void aFolderWithoutStudiesIsRefused() {
        assertThrows(Refused.class, () -> index(ReportJob.Format.HTML));
    }
}
