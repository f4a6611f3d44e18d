package coldproof.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class CountedTest {
    @Test
    void aNounFollowsItsNumber() {
        assertEquals("0 trials", Counted.of(0, "trial"));
        assertEquals("1 trial", Counted.of(1, "trial"));
        assertEquals("2 entries are", Counted.of(2, "entry is", "entries are"));
        assertEquals("1 degree of freedom", Counted.degreesOfFreedom("1"));
        assertEquals("1.5 degrees of freedom", Counted.degreesOfFreedom("1.5"));
    }
}
