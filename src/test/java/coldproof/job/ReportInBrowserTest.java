package coldproof.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import coldproof.job.demo.DemoJob;
import coldproof.report.json.VerdictJson;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The report of the demonstration in a real browser: mvn test -Dslow.groups= -Dwanted.groups=long -Dtest=ReportInBrowserTest. Skipped where there is none. */
@Tag("long")
class ReportInBrowserTest {
    /**
     * Put into a copy of the page by this test, never into the page: lists what is wider than the window, letters of plots that stand over each
     * other or leave their plot, and cells whose text is cut.
     */
    private static final String LOOK = """
            <script>
            const found = [];
            const wide = document.documentElement.scrollWidth - window.innerWidth;
            if (wide > 0) found.push('the page is ' + wide + ' wider than the window');
            const over = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.5 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 2.5;
            for (const svg of document.querySelectorAll('figure > svg')) {
              const box = svg.getBoundingClientRect();
              const texts = [...svg.querySelectorAll('text')].map(t => [t.textContent, t.getBoundingClientRect()]);
              texts.forEach(([words, r], i) => {
                if (r.left < box.left - 0.5 || r.right > box.right + 0.5 || r.top < box.top - 0.5 || r.bottom > box.bottom + 0.5) found.push('cut off: ' + words);
                texts.slice(i + 1).forEach(([others, o]) => { if (over(r, o)) found.push('over each other: ' + words + ' / ' + others); });
              });
              if (box.width < 250) found.push('a plot only ' + box.width + ' wide');
            }
            for (const e of document.querySelectorAll('p,li,dd,dt,td,th,h1,h2,span,pre')) {
              if (!e.closest('svg') && e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).display !== 'inline' && getComputedStyle(e).overflowX === 'hidden') found.push('cut: ' + e.textContent);
              const r = e.getBoundingClientRect();
              if (!e.closest('.wide') && r.right > window.innerWidth + 0.5) found.push('runs out: ' + e.tagName + ' ' + e.textContent.slice(0, 60));
              const size = parseFloat(getComputedStyle(e).fontSize);
              if (size < 12) found.push('letters of ' + size + ' px: ' + e.textContent.slice(0, 60));
            }
            const out = document.createElement('pre');
            out.id = 'found-by-test';
            out.textContent = found.length + ' faults\\n' + found.join('\\n');
            document.body.append(out);
            </script>
            """;

    @TempDir
    Path folder;
    private Browser browser;
    private Path study;

    @BeforeEach
    void study() throws IOException {
        Optional<Browser> found = Browser.find(folder);
        assumeTrue(found.isPresent(), "no browser here: set COLDPROOF_BROWSER to one that runs without a window");
        browser = found.get();
        study = DemoJob.make(Optional.of(folder.resolve("demo")));
        ReportJob.write(study);
    }

    /** What the browser makes of the page has every number of the JSON verdict, and nothing is complained of. */
    @ParameterizedTest(name = "{0} px wide, dark {1}")
    @CsvSource({"390, false", "390, true", "1280, false", "1280, true"})
    void theNumbersInTheBrowserAreThoseOfTheJsonVerdict(int width, boolean dark) throws Exception {
        Browser.Run run = browser.run(study.resolve("report.html"), width, dark, "--dump-dom");
        assertFalse(run.err().contains("CONSOLE"), run.err());
        VerdictJob.Answer answer = VerdictJob.ofStudy(StudyView.read(study)).get(0);
        Map<String, Object> json = ReportJobTest.flat("", VerdictJson.of(answer.verdict(), answer.deviations()), new LinkedHashMap<>());
        Map<String, Double> shown = ReportJobTest.numbers(run.out());
        assertTrue(shown.size() >= 12, shown.toString());
        shown.forEach((key, value) -> assertEquals((Double) json.get(key), value, 0, key));
    }

    @ParameterizedTest(name = "{0} px wide, dark {1}")
    @CsvSource({"390, false", "1280, false", "1280, true", "320, false"})
    void nothingOverlapsOrIsCut(int width, boolean dark) throws Exception {
        Path copy = folder.resolve("copy.html");
        Files.writeString(copy, Files.readString(study.resolve("report.html")).replaceFirst("<meta http-equiv=\"Content-Security-Policy\"[^>]*>", "").replace("</body>", LOOK + "</body>"));
        String dom = browser.run(copy, width, dark, "--dump-dom").out();
        String found = dom.substring(dom.indexOf("id=\"found-by-test\">") + 19, dom.lastIndexOf("</pre>"));
        assertEquals("0 faults", found.strip());
    }

    @Test
    void itPrints() throws Exception {
        Path pdf = folder.resolve("report.pdf");
        Browser.Run run = browser.run(study.resolve("report.html"), 1280, false, "--no-pdf-header-footer", "--print-to-pdf=" + pdf);
        assertFalse(run.err().contains("CONSOLE"), run.err());
        byte[] bytes = Files.readAllBytes(pdf);
        assertEquals("%PDF", new String(bytes, 0, 4, StandardCharsets.US_ASCII));
        assertTrue(bytes.length > 50_000);
    }
}
