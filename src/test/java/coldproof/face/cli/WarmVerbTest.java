package coldproof.face.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** The archive itself is made by every {@code mvn package}, which fails if it cannot be; {@code start.sh} measures what it is worth. */
class WarmVerbTest {
    @Test
    void looseClassesHaveNoArchiveAndThePersonIsToldWhatHas() {
        Call call = Call.of("warm");
        assertEquals(ExitStatus.WRONG_INPUT, call.status());
        assertTrue(call.err().contains("bin/coldproof"), call.err());
    }

    @Test
    void theWalkIsNoBusinessOfThePerson() {
        assertFalse(Call.of("warm", "--help").out().contains(WarmVerb.WALK));
    }

    @Test
    void walksTheUsualPathsInSilence() {
        Call call = Call.of("warm", WarmVerb.WALK);
        assertEquals(ExitStatus.DONE, call.status());
        assertEquals("", call.out() + call.err());
    }
}
