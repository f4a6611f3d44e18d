package coldproof.report.text;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.function.Consumer;
import org.junit.jupiter.api.Test;

/** Where lines break and begin. */
class WrapTest {
    private static String text(Consumer<StringBuilder> writer) {
        StringBuilder out = new StringBuilder("before\n");
        writer.accept(out);
        return out.substring("before\n".length());
    }

    @Test
    void textBreaksAtTheLastSpaceThatFits() {
        assertEquals("the air is\ncold\n", Wrap.at(12, "the air is cold"));
    }

    @Test
    void aWordLongerThanTheLineStaysWhole() {
        assertEquals("see\n/a/folder/with/a/long/name\nfirst\n", Wrap.at(20, "see /a/folder/with/a/long/name first"));
    }

    @Test
    void furtherLinesOfAHangingTextBeginBelowTheFirst() {
        assertEquals("  look  drift: the\n        scores fall\n", text(out -> Wrap.hanging("  look  ", "drift: the scores fall", 20, out)));
    }

    @Test
    void aHeadWithoutTextStaysAlone() {
        assertEquals("head: \n", text(out -> Wrap.hanging("head: ", "", 20, out)));
    }

    @Test
    void labelsShareOneColumn() {
        assertEquals("  p     0.04\n  test  t = 5 on\n        61\n", text(out -> {
            Wrap.labelled("p", 6, "0.04", 18, out);
            Wrap.labelled("test", 6, "t = 5 on 61", 18, out);
        }));
    }

    @Test
    void onlyTheFirstLineOfAPointIsMarked() {
        assertEquals("  - no cable over\n    a path\n", text(out -> Wrap.point("no cable over a path", 18, out)));
    }

    /** Common practice in setting figures: number and unit stand in one line. */
    @Test
    void aNumberAndItsUnitStayTogether() {
        assertEquals("it cannot reach\n5 %, however clear\n", Wrap.at(18, "it cannot reach 5 %, however clear"));
        assertEquals("between\n3.5 °C. Then\n", Wrap.at(12, "between 3.5 °C. Then"));
        assertEquals("these are 12\ntrials in all\n", Wrap.at(13, "these are 12 trials in all"));
    }

    @Test
    void anEqualsSignStaysWithBothItsSides() {
        assertEquals("no drift\n(p = 0.748)\n", Wrap.at(12, "no drift (p = 0.748)"));
    }

    @Test
    void whatIsKeptTogetherNeverLeavesHalfALineEmpty() {
        assertEquals("a = b = c\n= d\n", Wrap.at(10, "a = b = c = d"));
    }
}
