package coldproof.files.journal;

import java.io.IOException;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A journal of 200 entries with every single byte changed, and cut at every place: detected, located, and the rest readable. */
class EveryDamageTest {
    private static final int ENTRIES = 200;
    private static final int ENTRIES_OF_A_PART = 8;
    private static DamagedJournal journal;

    @BeforeAll
    static void record() throws IOException {
        journal = new DamagedJournal(2, ENTRIES);
    }

    @Test
    void aChangeOfAnyByteIsDetectedAndLocatedAndTheRestIsReadable() {
        SplittableRandom random = new SplittableRandom(1);
        int step = 499; // every byte is the long test's work
        for (int at = 0; at < journal.length(); at += 1 + random.nextInt(step)) {
            journal.changed(at, (byte) (journal.at(at) ^ 1 << random.nextInt(8)));
            journal.changed(at, journal.at(at) == '\n' ? (byte) ' ' : (byte) '\n');
        }
    }

    @Test
    @Tag("long")
    void aChangeOfEveryByteIsDetectedAndLocatedAndTheRestIsReadable() {
        for (int at = 0; at < journal.length(); at++) {
            SplittableRandom random = new SplittableRandom(at);
            journal.changed(at, (byte) (journal.at(at) ^ 1 << random.nextInt(8)));
            journal.changed(at, journal.at(at) == '\n' ? (byte) '\r' : (byte) '\n');
            journal.changed(at, (byte) (journal.at(at) + 1 + random.nextInt(255)));
        }
    }

    /**
     * Reading 200 entries for each of sixteen million changes takes the better part of an hour; a change shows at its line and its neighbours,
     * so the same events stand here in journals of a few entries.
     */
    @Test
    @Tag("long")
    void everyOtherValueOfEveryByteIsDetectedAndLocatedAndTheRestIsReadable() throws IOException {
        for (int first = 2; first <= ENTRIES; first += ENTRIES_OF_A_PART) {
            DamagedJournal part = new DamagedJournal(first, Math.min(ENTRIES, first + ENTRIES_OF_A_PART - 1));
            for (int at = 0; at < part.length(); at++) {
                for (int more = 1; more < 256; more++) {
                    part.changed(at, (byte) (part.at(at) + more));
                }
            }
        }
    }

    @Test
    void aChangeOfEveryByteOfTheFirstAndLastLineIsDetected() {
        for (int at = 0; at < journal.length(); at++) {
            if (journal.lineOf(at) == 1 || journal.lineOf(at) == ENTRIES) {
                journal.changed(at, (byte) (journal.at(at) ^ 1));
                journal.changed(at, (byte) (journal.at(at) ^ 0x20));
            }
        }
    }

    @Test
    void aCutAtAnyPlaceIsDetectedAndAllBeforeItIsReadable() {
        for (int length = 0; length < journal.length(); length += length < 500 || length > journal.length() - 500 ? 1 : 211) {
            journal.cut(length);
        }
    }

    @Test
    @Tag("long")
    void aCutAtEveryPlaceIsDetectedAndAllBeforeItIsReadable() {
        for (int length = 0; length < journal.length(); length++) {
            journal.cut(length);
        }
    }
}
