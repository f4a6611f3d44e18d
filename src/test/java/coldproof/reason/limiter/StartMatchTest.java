package coldproof.reason.limiter;

import static org.junit.jupiter.api.Assertions.assertEquals;

import coldproof.reason.limiter.StartMatch.Start;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Differences by hand. */
class StartMatchTest {
    private static final String ASKED = "within 3.0 K of its session's first trial";
    private static final String BEGAN = "start conditions, from the rows before the work: the die began " + ASKED + " in ";

    @Test
    void eachSessionHasAFirstTrialOfItsOwn() {
        List<Start> starts = List.of(new Start("1", 1, 40), new Start("1", 2, 43), new Start("2", 3, 12), new Start("2", 4, 10.5));
        assertEquals(BEGAN + "all of 2 trials, at most 3.0 K off", StartMatch.of(starts, 3));
    }

    @Test
    void whatWasOffIsNamed() {
        List<Start> starts = List.of(new Start("1", 1, Double.NaN), new Start("1", 2, 40), new Start("1", 3, 43.5), new Start("1", 4, 36), new Start("1", 5, 41));
        assertEquals(BEGAN + "1 of 3 trials, not in trial 3 (+3.5 K), trial 4 (-4.0 K)", StartMatch.of(starts, 3));
    }

    @Test
    void tracesThatDoNotTellAreSaidNotToTell() {
        assertEquals("start conditions: the traces do not show whether the die began " + ASKED, StartMatch.of(List.of(new Start("1", 1, 40), new Start("1", 2, Double.NaN)), 3));
    }
}
