package coldproof.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.job.demo.DemoJob;
import coldproof.reason.limiter.KnownLimits;
import coldproof.reason.limiter.LimiterAnswer;
import coldproof.reason.limiter.Limiters;
import coldproof.report.export.TidyTable;
import coldproof.report.json.JsonObject;
import coldproof.report.json.VerdictJson;
import coldproof.report.text.LimiterText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReportJobTest {
    @TempDir
    Path folder;

    private Path chilled(String name) throws IOException {
        return BenchFixture.study(folder.resolve(name), ReadyPlans.text("chilled-air"), BenchFixture.gain("ambient", "chilled", 4));
    }

    private static String page(Path study) throws IOException {
        return Files.readString(ReportJob.write(study));
    }

    /** Every number of the verdict stands on the page to the last digit, under the key of the JSON document. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({"chilled-air, ambient, chilled", "fan-alternating, fan, maximum", "power-source-pairs, power source, battery", "fresh-paste, paste, new kind",
        "background-load, neighbour, busy"})
    void theNumbersOfThePageAreThoseOfTheJsonVerdict(String plan, String factor, String level) throws IOException {
        Path study = BenchFixture.study(folder.resolve("study"), ReadyPlans.text(plan), BenchFixture.gain(factor, level, 4));
        VerdictJob.Answer answer = VerdictJob.ofStudy(StudyView.read(study)).get(0);
        Map<String, Object> json = flat("", VerdictJson.of(answer.verdict(), answer.deviations()), new LinkedHashMap<>());
        Map<String, Double> shown = numbers(page(study));
        assertTrue(shown.keySet().containsAll(List.of("effectPercent", "interval.low", "interval.high", "t", "df", "p")), shown.keySet().toString());
        shown.forEach((key, value) -> assertEquals((Double) json.get(key), value, 0, key));
    }

    static Map<String, Object> flat(String before, JsonObject object, Map<String, Object> into) {
        object.members().forEach((key, value) -> {
            if (value instanceof JsonObject inner) {
                flat(before + key + ".", inner, into);
            } else {
                into.put(before + key, value);
            }
        });
        return into;
    }

    /** The first of each key: the page of a study with several changed levels has them all. */
    static Map<String, Double> numbers(String page) {
        Map<String, Double> numbers = new LinkedHashMap<>();
        Matcher data = Pattern.compile("<data data-key=\"([^\"]+)\" value=\"([^\"]+)\">").matcher(page);
        while (data.find()) {
            numbers.putIfAbsent(data.group(1), Double.parseDouble(data.group(2)));
        }
        return numbers;
    }

    /** Three levels of a fan: the page has the numbers of each change under its name. */
    @Test
    void severalChangesAreShownTogetherAndEach() throws IOException {
        String plan = ReadyPlans.text("fan-alternating").replace("trials: 12", "trials: 6").replace("levels: [auto, maximum]", "levels: [auto, middling, maximum]").replace("against: maximum", "against: [middling, maximum]");
        Path study = BenchFixture.study(folder.resolve("study"), plan, BenchFixture.gain("fan", "maximum", 6));
        String page = page(study);
        List<VerdictJob.Answer> answers = VerdictJob.ofStudy(StudyView.read(study));
        assertEquals(2, answers.size());
        for (VerdictJob.Answer answer : answers) {
            int from = page.indexOf("<dl data-about=\"" + answer.question().against() + "\">");
            Map<String, Double> shown = numbers(page.substring(from, page.indexOf("</dl>", from)));
            Map<String, Object> json = flat("", VerdictJson.of(answer.verdict(), List.of()), new LinkedHashMap<>());
            assertTrue(shown.size() >= 8, shown.toString());
            shown.forEach((key, value) -> assertEquals((Double) json.get(key), value, 0, key));
        }
        assertTrue(page.contains("2 changes of fan were judged together"));
    }

    @Test
    void theSameFilesGiveTheSameBytes() throws IOException {
        Path study = chilled("study");
        assertEquals(page(study), page(study));
        assertEquals(page(study), page(chilled("elsewhere")));
    }

    /** XHTML syntax of HTML (HTML Living Standard, section 14): an XML reader takes it, so every element is closed and every text escaped. */
    @Test
    void thePageIsWellFormed() throws Exception {
        Path file = ReportJob.write(chilled("study"));
        DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(file.toFile());
    }

    @Test
    void thePageFetchesNothingAndRunsNothing() throws IOException {
        String page = page(chilled("study")).toLowerCase(Locale.ROOT);
        for (String word : List.of("<script", "http:", "https:", "src=", "url(", "@import", "javascript:", "<link", "<iframe")) {
            assertFalse(page.contains(word), word);
        }
        assertTrue(page.contains("default-src &#39;none&#39;"));
    }

    @Test
    void simulatedDataAreMarkedBeforeTheAnswer() throws IOException {
        String page = page(chilled("study"));
        int mark = page.indexOf("SIMULATED DATA");
        assertTrue(mark > 0 && mark < page.indexOf("class=\"answer\""));
    }

    /** Neither the folder nor whose computer it is can be read from the page. */
    @Test
    void nothingTellsWhereItWasMade() throws IOException {
        String page = page(chilled("study"));
        assertFalse(page.contains(folder.toString()));
        assertFalse(System.getProperty("user.name").length() > 4 && page.contains(System.getProperty("user.name")));
    }

    /** The demonstration has a simulated trace for each of its 32 trials; a broken one is named and costs nothing else. */
    @Test
    void tracesAndTheLimiterAreShown() throws IOException {
        Path study = DemoJob.make(Optional.of(folder.resolve("demo")));
        Files.writeString(study.resolve("traces/trial-005.csv"), "<b>no log</b>");
        List<Integer> read = new ArrayList<>();
        Path file = ReportJob.write(new ReportJob.Request(study, ReportJob.Format.HTML, Optional.empty(), false), read::add);
        String page = Files.readString(file);
        assertEquals(IntStream.rangeClosed(1, 32).boxed().toList(), read);
        assertTrue(page.contains("What holds the device back") && page.contains("Phases of the work"));
        assertTrue(page.contains("1 could not be read: that of trial 5."));
        LimiterAnswer answer = Limiters.explain(TraceReading.of(LimiterJob.entries(StudyView.read(study)), List.of(), done -> {}).trials().stream()
                .flatMap(Optional::stream).toList(), KnownLimits.NONE);
        answer.conditions().forEach(condition -> assertTrue(page.contains("<td>" + LimiterText.name(condition.levels()) + "</td><td>" + condition.limiter().word() + "</td>")));
        answer.conditions().forEach(condition -> condition.headroom().ifPresent(headroom -> assertTrue(page.replace('\u00a0', ' ').contains(LimiterText.headroom(headroom)), LimiterText.headroom(headroom))));
        assertTrue(answer.conditions().stream().anyMatch(condition -> condition.headroom().isPresent()));
        assertTrue(page.replace('\u00a0', ' ').contains("start conditions, from the rows before the work: the die began within 20.0 K"), "the plan of the demonstration asks for it");
    }

    /** Every column of every table is in the dictionary, and the verdict in its table is that of the JSON document. */
    @Test
    void theDataComeWithTheirDictionary() throws IOException {
        Path study = DemoJob.make(Optional.of(folder.resolve("demo")));
        List<TidyTable> tables = ReportJob.data(study, read -> {});
        assertEquals(List.of("trials", "loops", "skipped", "deviations", "verdicts", "traces", "dictionary"), tables.stream().map(TidyTable::name).toList());
        List<String> explained = tables.get(6).rows().stream().map(row -> row.get(0).orElseThrow() + "." + row.get(1).orElseThrow()).toList();
        List<String> columns = tables.subList(0, 6).stream().flatMap(table -> table.columns().stream().map(column -> table.name() + "." + column.name())).toList();
        assertEquals(columns, explained);
        assertEquals(32, tables.get(5).rows().size());
        VerdictJob.Answer answer = VerdictJob.ofStudy(StudyView.read(study)).get(0);
        JsonObject json = VerdictJson.of(answer.verdict(), List.of());
        assertEquals(json.members().get("effectPercent"), tables.get(4).rows().get(0).get(5).orElseThrow());
        assertEquals(json.members().get("p"), tables.get(4).rows().get(0).get(13).orElseThrow());
    }

    @Test
    void aPlanWithoutTrialsHasAPageToo() throws IOException {
        Path study = folder.resolve("study");
        PlanJob.create(study, ReadyPlans.text("chilled-air"));
        String page = page(study);
        assertTrue(page.contains("NOT FROZEN") && page.contains("No trial was recorded yet"));
    }

    @Test
    void anotherFileMayBeNamed() throws IOException {
        Path out = folder.resolve("somewhere else.html");
        assertEquals(out, ReportJob.write(new ReportJob.Request(chilled("study"), ReportJob.Format.HTML, Optional.of(out), false), read -> {}));
        assertTrue(Files.size(out) > 10_000);
    }
}
