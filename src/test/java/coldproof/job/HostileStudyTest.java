package coldproof.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.report.export.CsvText;
import coldproof.report.export.TidyTable;
import coldproof.report.json.ExportJson;
import coldproof.report.json.JsonObject;
import coldproof.report.json.PlanJson;
import coldproof.report.json.VerdictJson;
import coldproof.report.text.PlanText;
import coldproof.report.text.VerdictText;
import coldproof.study.CautionAcknowledged;
import coldproof.study.CautionShown;
import coldproof.study.DeviationNoted;
import coldproof.study.ImportedTable;
import coldproof.study.Observed;
import coldproof.study.RuleLoosened;
import coldproof.study.SessionClosed;
import coldproof.study.Source;
import coldproof.study.StudySimulated;
import coldproof.study.TrialCorrected;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/**
 * Studies in which every text a person can write tries to be something else: markup, scripts, escapes of a terminal, formulas, marks that turn
 * the direction of writing, tables and links of Markdown. The kinds follow OWASP's pages on cross-site scripting and on CSV injection,
 * ECMA-48 for escapes and Unicode Standard Annex 9 for direction.
 */
class HostileStudyTest {
    /** ECMA-48 C0 and C1 controls but the line feed, and the marks of UAX 9, section 2, with line and paragraph separators. */
    private static final Pattern CONTROL = Pattern.compile("[\\x00-\\x09\\x0b-\\x1f\\x7f-\\x9f\\u202a-\\u202e\\u2066-\\u2069\\u200e\\u200f\\u061c\\u2028\\u2029]");
    private static final Set<String> ELEMENTS = Set.of("html", "head", "meta", "title", "style", "body", "header", "h1", "h2", "h3", "p", "main", "section", "nav", "ul", "li", "a", "div",
            "strong", "dl", "dt", "dd", "data", "table", "thead", "tbody", "tr", "th", "td", "pre", "figure", "figcaption", "b", "svg", "desc", "path", "rect", "text", "tspan", "bdi",
            "span");

    @TempDir
    Path folder;

    /** One of each kind, for every run. */
    static List<String> few() {
        List<String> all = payloads();
        return List.of(all.get(3), all.get(10), all.get(13), all.get(15), all.get(19), all.get(21), all.get(26));
    }

    static List<String> payloads() {
        return List.of("<script>alert(1)</script>", "\"><img src=x onerror=alert(1)>", "' onmouseover='alert(1)", "</title></style></svg><svg onload=alert(1)>", "]]><!--<x>",
                "&lt;b&gt;&#x3c;script&#x3e;", "=HYPERLINK(\"http://elsewhere.example\",\"x\")", "+cmd|' /C x'!A0", "@SUM(1+1)", "-2+3", "\t=1+1", "\r=1+1", "\uff1d1+1",
                "\u001b[2J\u001b]0;title\u0007", "\u009b31m", "x\u202egnp.exe", "\u2066\u2067rtl\u2069", "\u05d7\u05d5\u05e8\u05e3 12 %", "a|b|c", "[x](javascript:alert(1))",
                "![x](http://elsewhere.example/x.png)", "`` ` ```", "line\n# heading\n- item", "https://elsewhere.example www.elsewhere.example", "*bold* _it_ ~~no~~ $x$", "x\u0000y",
                "\ud800half", "1. first", "- - -", "> quoted", "%s %n %d ${jndi:ldap://x}", "w".repeat(400));
    }

    private static String yaml(String text) {
        StringBuilder quoted = new StringBuilder("\"");
        for (char c : text.toCharArray()) {
            quoted.append(c < 0x20 || c >= 0x7f || c == '"' || c == '\\' ? String.format("\\u%04X", (int) c) : String.valueOf(c));
        }
        return quoted.append('"').toString();
    }

    private static String plan(String bad) {
        return "coldproof: 1\ntitle: " + yaml(bad) + "\ndevice: " + yaml(bad + " d") + "\nmetric: {name: " + yaml(bad + " m") + ", unit: " + yaml(bad + " u")
                + ", better: higher}\ncompare: {factor: " + yaml(bad + " f") + ", baseline: " + yaml(bad + " a") + ", against: " + yaml(bad + " b")
                + "}\nmatters: 3 %\nclaim: gain\nfactors:\n  " + yaml(bad + " f") + ": {change: per session, levels: {" + yaml(bad + " a") + ": " + yaml(bad) + ", "
                + yaml(bad + " b") + ": " + yaml(bad) + "}}\n  " + yaml(bad + " g") + ": {change: per trial, levels: [" + yaml(bad + " 1") + ", " + yaml(bad + " 2")
                + "]}\nnoise: {run to run: 1 %, session to session: 1 %, from: " + yaml(bad) + "}\nlayout: {sessions: 2, trials per condition: 1, order: counterbalanced}\n"
                + "workload: {instruction: " + yaml(bad) + ", command: [" + yaml(bad) + "]}\nseed: 7\n";
    }

    private Path study(String bad) throws IOException {
        PlanJob.create(folder, plan(bad));
        Machine machine = BenchFixture.machine(folder);
        PlanJob.freeze(folder, machine, Optional.empty());
        Files.createDirectories(folder.resolve("traces"));
        Files.write(folder.resolve("traces/t.csv"), ("time s,power W,\"" + bad.replace("\"", "\"\"") + "\"\n0,1,5\n1,2,6\n2,3,7\n3,4,8\n").getBytes(StandardCharsets.UTF_8));
        try (BenchStudy study = BenchStudy.open(folder, machine)) {
            study.append(new StudySimulated(bad));
            study.append(new ImportedTable("/home/" + bad, bad, 1));
            study.append(new CautionShown(bad, bad, "care", Map.of(bad, Observed.of(bad))));
            study.append(new CautionAcknowledged(bad, bad, "care", bad, Map.of(bad, Observed.of(1, bad))));
            study.append(new RuleLoosened(bad, bad));
            for (Position position : study.view().sheet().positions()) {
                study.startConditions(position, Map.of(bad, Observed.of(3, bad)), List.of(bad));
                if (position.number() == 3) {
                    study.skip(position, bad);
                } else {
                    study.record(position, BenchFixture.gain(bad + " f", bad + " b", 4).applyAsDouble(position), List.of(), Optional.of("traces/t.csv"),
                            OffsetDateTime.parse("2026-01-14T12:00:00Z"), 60, Source.MANUAL);
                }
            }
            study.append(new TrialCorrected(study.view().state().trials().get(0).sequence(), 41, bad));
            study.note(bad);
            study.append(new DeviationNoted(bad, bad));
            study.endSession(SessionClosed.Ending.ABORTED, bad);
        }
        return folder;
    }

    private static String report(Path study, ReportJob.Format format) throws IOException {
        return Files.readString(ReportJob.write(new ReportJob.Request(study, format, Optional.empty(), true), read -> {}));
    }

    @Tag("long")
    @ParameterizedTest
    @MethodSource("payloads")
    void everyOutputOfEveryKindIsHarmless(String bad) throws Exception {
        everyOutputIsHarmless(bad);
    }

    @ParameterizedTest
    @MethodSource("few")
    void everyOutputIsHarmless(String bad) throws Exception {
        Path study = study(bad);
        String html = report(study, ReportJob.Format.HTML);
        inert(DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(study.resolve("report.html").toFile()).getDocumentElement());
        withoutControls(html);
        withoutControls(report(study, ReportJob.Format.TEXT));
        markdown(report(study, ReportJob.Format.MARKDOWN));
        for (ReportJob.Format format : ReportJob.Format.values()) {
            withoutControls(Files.readString(IndexJob.write(study, format, Optional.empty()).file()));
        }
        inert(DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(study.resolve("index.html").toFile()).getDocumentElement());
        markdown(Files.readString(study.resolve("index.md")));
        StudyView view = StudyView.read(study);
        tables(ReportJob.data(study, read -> {}));
        screen(view);
        documents(view);
    }

    /** Only elements of the page itself, no attribute that runs, no address but a place in the page. */
    private static void inert(Element root) {
        NodeList all = root.getElementsByTagName("*");
        for (int i = 0; i < all.getLength(); i++) {
            Element element = (Element) all.item(i);
            assertTrue(ELEMENTS.contains(element.getTagName()), element.getTagName());
            for (int k = 0; k < element.getAttributes().getLength(); k++) {
                String name = element.getAttributes().item(k).getNodeName();
                assertFalse(name.startsWith("on") || name.equals("src") || name.equals("style"), name);
                assertTrue(!name.equals("href") || element.getAttribute(name).matches("#[a-z]+|report.html"), element.getAttribute(name));
            }
        }
    }

    private static void withoutControls(String text) {
        Matcher found = CONTROL.matcher(text);
        assertFalse(found.find(), () -> "U+" + Integer.toHexString(found.group().charAt(0)) + " near: " + text.substring(Math.max(0, found.start() - 40), found.start()));
    }

    /** CommonMark 0.31: outside fences no raw HTML, no heading but the page's own, no link; every row of a table has the cells of its head. */
    private static void markdown(String text) {
        withoutControls(text);
        String fence = "";
        int cells = 0;
        for (String line : text.split("\n")) {
            if (fence.isEmpty() && line.matches("`{3,}text")) {
                fence = line.replace("text", "");
            } else if (line.equals(fence)) {
                fence = "";
            } else if (fence.isEmpty()) {
                assertFalse(line.contains("<") || line.matches("(?s).*(?<!\\\\)\\]\\((?!report.md\\)$).*") || line.matches(".*https?://.*") || line.matches("(?i).*(^|[^\\\\])www\\.[a-z].*"), line);
                assertTrue(!line.startsWith("#") || line.matches("##?#? [^#].*"), line);
                int here = line.startsWith("|") ? line.replaceAll("\\\\.", "").split("\\|", -1).length : 0;
                assertTrue(cells == 0 || here == 0 || here == cells, line);
                cells = here;
            }
        }
        assertEquals("", fence);
    }

    /** OWASP, CSV Injection: no cell of text begins with =, +, -, @, a tab or a carriage return, nor with the wide forms of those signs. */
    private static void tables(List<TidyTable> tables) {
        for (TidyTable table : tables) {
            String csv = CsvText.of(table);
            withoutControls(csv);
            assertFalse(Pattern.compile("(^|,|\n)\"?\\s*[=+@\uff1d\uff0b\uff0d\uff20]").matcher(csv).find(), csv);
            assertFalse(Pattern.compile("(^|,|\n)\"?\\s*-(?![0-9.]+(,|\n))").matcher(csv).find(), csv);
        }
    }

    private static void screen(StudyView view) {
        Plan plan = view.plan();
        withoutControls(PlanText.of(plan, true, view.planDigest(), 80));
        withoutControls(PlanText.sheet(plan, view.sheet(), Map.of(1, plan.title())));
        VerdictJob.ofStudy(view).forEach(answer -> withoutControls(VerdictText.of(answer.question(), answer.verdict(), answer.deviations(), 80)));
    }

    /** RFC 8259, section 7: controls are escaped in strings; a reader of YAML 1.2, of which JSON is a part, takes the document. */
    private static void documents(StudyView view) {
        List<JsonObject> documents = new ArrayList<>(List.of(PlanJson.plan(view.plan(), true, view.planDigest()), PlanJson.sheet(view.sheet(), Map.of())));
        VerdictJob.ofStudy(view).forEach(answer -> documents.add(VerdictJson.of(answer.verdict(), answer.deviations())));
        documents.add(ExportJson.of(ReportJob.data(view.folder(), read -> {})));
        for (JsonObject document : documents) {
            String text = document.toText();
            assertFalse(Pattern.compile("[\\x00-\\x1f]").matcher(text).find());
        }
    }
}
