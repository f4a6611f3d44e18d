package coldproof.study;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Entries taken one by one against all of them at once, over random studies with everything that can go wrong in one. */
class StudyFoldTest {
    private static final OffsetDateTime START = OffsetDateTime.parse("2026-01-14T09:30:00+01:00");
    private final List<Entry> entries = new ArrayList<>();
    private long sequence;
    private OffsetDateTime now = START;
    private double monotonicSeconds;
    private String process = "first";

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
    void oneByOneAmountsToAllAtOnce(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int before = random.nextInt(20);
        for (int i = 0; i < before; i++) {
            entries.add(next(random));
        }
        StudyFold fold = new StudyFold(entries);
        for (int i = 0; i < 150; i++) {
            entries.add(next(random));
            fold.add(entries.get(entries.size() - 1));
            assertEquals(StudyState.fold(entries), fold.state(), () -> "seed " + seed + ", after " + entries.get(entries.size() - 1));
        }
    }

    private Entry next(SplittableRandom random) {
        sequence += random.nextInt(25) == 0 ? 1 + random.nextInt(3) : 1; // at times entries are missing
        if (random.nextInt(12) == 0) { // another process, at times on a computer of another zone
            process = "process " + sequence;
            monotonicSeconds = 0;
            now = random.nextBoolean() ? now : now.withOffsetSameInstant(ZoneOffset.ofHours(random.nextInt(4)));
        }
        double seconds = random.nextDouble() * 300;
        monotonicSeconds += seconds;
        now = now.plusSeconds(random.nextInt(15) == 0 ? -400 : (long) seconds);
        return new Entry(sequence, now, monotonicSeconds, process, event(random));
    }

    private Event event(SplittableRandom random) {
        int position = 1 + random.nextInt(12);
        int session = 1 + random.nextInt(3);
        long other = 1 + random.nextLong(sequence + 4); // an earlier entry, itself, or one to come
        return switch (random.nextInt(16)) {
            case 0 -> new PlanFrozen(random.nextBoolean() ? "aa" : "bb", Optional.empty());
            case 1 -> new PlanAmended("cc", Optional.empty(), "typing mistake");
            case 2 -> new SessionOpened(session, Map.of("ambient", random.nextBoolean() ? "room" : "chilled"), "");
            case 3 -> new SessionClosed(session, SessionClosed.Ending.values()[random.nextInt(3)], "dusk");
            case 4 -> random.nextBoolean() ? new Paused("tea") : new Resumed("");
            case 5 -> new TrialSkipped(position, "rattle");
            case 6, 7 -> new TrialUndone(other, "wrong key");
            case 8, 9 -> new TrialCorrected(other, 40 + random.nextDouble(), "two digits swapped");
            case 10 -> new NoteAdded("gloves on", random.nextBoolean() ? OptionalLong.of(other) : OptionalLong.empty());
            case 11 -> new JournalMended("the last line was cut short", Optional.of("journal.jsonl.torn-12"));
            case 12 -> new JournalsMerged(12, 3, 4, List.of("position 5 was recorded in both: the first stands"));
            case 13 -> new StartConditionsChecked(session, OptionalInt.of(position), Map.of(), List.of("battery at 38 %"));
            default -> new TrialRecorded(position, session, position, Map.of("ambient", "room"), 48 + random.nextDouble(), "frames/s", List.of(),
                    Optional.empty(), START, 240, Source.MANUAL);
        };
    }
}
