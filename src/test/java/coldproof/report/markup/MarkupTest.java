package coldproof.report.markup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MarkupTest {
    private static String text(String text) {
        return new Markup().element("p", text).document();
    }

    /** The characters that HTML Living Standard section 13.3 (serialising) and XML 1.0 section 2.4 want escaped, and both quotes. */
    @Test
    void textCannotBecomeMarkup() {
        assertEquals("<p>&lt;script&gt;alert(&#39;1&#39;) &amp;&amp; &quot;2&quot;&lt;/script&gt;</p>", text("<script>alert('1') && \"2\"</script>"));
    }

    @Test
    void anAttributeCannotBeLeft() {
        assertEquals("<p title=\"&quot; onclick=&quot;x&#39;\"></p>", new Markup().element("p", "", "title", "\" onclick=\"x'").document());
    }

    @Test
    void controlCharactersAreShownAsSymbols() {
        assertEquals("<p>\u241b[31mred\u2400</p>", text("\u001b[31mred\u0000"));
    }

    /** U+202E and its kind: Unicode Standard Annex 9, section 2; "Trojan Source" (Boucher and Anderson 2021) is what they are used for. */
    @Test
    void marksThatReorderALineAreTakenOut() {
        assertEquals("<p>a\ufffdb\ufffdc</p>", text("a\u202eb\u2066c"));
    }

    /** HTML Living Standard section 4.5.24: bdi keeps a run apart so that it does not reorder the digits beside it. */
    @Test
    void lettersFromRightToLeftAreKeptApart() {
        assertEquals("<p>gain <bdi>\u05d7\u05d5\u05e8\u05e3 \u05e7\u05e8</bdi> 3\u00a0%</p>", text("gain \u05d7\u05d5\u05e8\u05e3 \u05e7\u05e8 3 %"));
    }

    @Test
    void halfACharacterIsReplaced() {
        assertEquals("<p>\ufffdx\ufffd\ud83d\ude00</p>", text("\ud800x\udc00\ud83d\ude00"));
    }

    @Test
    void lineEndsStayWhereTheyAreWanted() {
        assertEquals("<pre>a\nb\nc</pre>", new Markup().open("pre").lines("a\r\nb\nc").close("pre").document());
    }

    @ParameterizedTest
    @CsvSource({"script", "iframe", "object", "form", "'p onclick'", "foreignObject", "'p>'", "'1p'"})
    void elementsThatRunOrFetchAreRefused(String name) {
        assertThrows(IllegalArgumentException.class, () -> new Markup().open(name));
    }

    @ParameterizedTest
    @CsvSource({"onclick, x", "src, a.png", "href, javascript:alert(1)", "href, //elsewhere.example/", "'a b', x"})
    void attributesThatRunOrFetchAreRefused(String name, String value) {
        assertThrows(IllegalArgumentException.class, () -> new Markup().open("a", name, value));
    }

    @ParameterizedTest
    @CsvSource({"'a{b:url(x)}'", "'</style>'", "'@import x'"})
    void rulesThatFetchAreRefused(String rules) {
        assertThrows(IllegalArgumentException.class, () -> new Markup().style(rules));
    }

    @Test
    void whatIsOpenMustBeClosedInTurn() {
        assertThrows(IllegalStateException.class, () -> new Markup().open("p").open("b").close("p"));
        assertThrows(IllegalStateException.class, () -> new Markup().open("p").document());
    }
}
