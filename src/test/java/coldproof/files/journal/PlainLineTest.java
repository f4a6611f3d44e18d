package coldproof.files.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.study.Entry;
import coldproof.study.Event;
import coldproof.study.EventKind;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import tools.jackson.core.json.JsonFactory;

/** The short way of reading a line against the general reader, which decides what a line means. */
class PlainLineTest {
    private static final JsonFactory JSON = JsonFactory.builder().build();
    private static final OffsetDateTime AT = OffsetDateTime.of(2026, 1, 14, 9, 31, 7, 45_000_000, ZoneOffset.ofHoursMinutes(-3, -30));
    private final PlainLine plain = new PlainLine();

    private static byte[] line(long sequence, Event event) {
        byte[] line = Line.encode(new Entry(sequence, AT, 12.5, "4f00", event), 0x0123456789abcdefL);
        return Arrays.copyOf(line, line.length - 1);
    }

    @Test
    void everyKindIsReadTheShortWayAndMeansTheSame() {
        for (Event event : EveryKind.events()) {
            byte[] line = line(7, event);
            Optional<Line> read = plain.read(line, 0, line.length);
            if (event.kind() == EventKind.UNKNOWN) {
                assertTrue(read.isEmpty());
            } else {
                assertEquals(Line.read(JSON, line, 0, line.length), read.orElseThrow(), () -> new String(line, StandardCharsets.UTF_8));
            }
        }
    }

    @Test
    void aLineWithAnyChangeMeansTheSameOrIsLeftToTheGeneralReader() {
        SplittableRandom random = new SplittableRandom(20260114);
        List<Event> kinds = EveryKind.events();
        byte[] spice = "{}[]\",:\\0123456789.-+Ee unt\t\u00e9\u0000/".getBytes(StandardCharsets.UTF_8);
        int shortWays = 0;
        for (int round = 0; round < 60_000; round++) {
            byte[] line = line(1 + random.nextInt(100_000), kinds.get(random.nextInt(kinds.size())));
            int changes = 1 + random.nextInt(3);
            for (int i = 0; i < changes; i++) {
                line = changed(line, random, spice);
            }
            shortWays += agrees(line) ? 1 : 0;
        }
        assertTrue(shortWays > 3_000, "only " + shortWays + " changed lines were read the short way: the test compares too little");
    }

    /** One byte changed, put in or left out, before the last 52, which have their own form. */
    private static byte[] changed(byte[] line, SplittableRandom random, byte[] spice) {
        int place = random.nextInt(line.length - 60);
        byte what = spice[random.nextInt(spice.length)];
        ByteArrayOutputStream changed = new ByteArrayOutputStream();
        int kind = random.nextInt(3);
        changed.write(line, 0, place);
        if (kind < 2) {
            changed.write(what);
        }
        int rest = kind == 1 ? place : place + 1;
        changed.write(line, rest, line.length - rest);
        return changed.toByteArray();
    }

    private boolean agrees(byte[] line) {
        Optional<Line> read = plain.read(line, 0, line.length);
        if (read.isPresent()) {
            assertEquals(Line.read(JSON, line, 0, line.length), read.get(), () -> new String(line, StandardCharsets.UTF_8));
        }
        return read.isPresent();
    }

    @Test
    void everyNumberIsReadToTheLastBit() {
        SplittableRandom random = new SplittableRandom(5);
        PlainText text = new PlainText();
        for (int round = 0; round < 100_000; round++) {
            double number = switch (round % 4) {
                case 0 -> Double.longBitsToDouble(random.nextLong());
                case 1 -> random.nextInt(1_000_000) / 1000.0;
                case 2 -> 50 + random.nextDouble();
                default -> -random.nextInt(100) * 0.1;
            };
            if (Double.isFinite(number)) {
                byte[] written = Double.toString(number).getBytes(StandardCharsets.US_ASCII);
                text.take(written, written.length);
                assertEquals(Double.doubleToLongBits(number), Double.doubleToLongBits(text.number(0, written.length)), () -> Double.toString(number));
            }
        }
    }

    /** Digits that no program writes for a number: up to eighteen, near and at the middle of two numbers. */
    @Test
    void everyDecimalIsReadToTheNearestNumber() {
        SplittableRandom random = new SplittableRandom(6);
        PlainText text = new PlainText();
        for (int round = 0; round < 200_000; round++) {
            long mantissa = random.nextLong(1L << 53, 1_000_000_000_000_000_000L);
            if (round % 3 == 0) {
                mantissa = (random.nextLong(1L << 53, 1L << 54) & ~1L) + 1; // the middle of two whole numbers that are doubles
            }
            String digits = Long.toString(mantissa);
            int decimals = round % 3 == 0 ? 1 : 1 + random.nextInt(digits.length() - 1);
            String decimal = round % 3 == 0 ? digits + ".0" : digits.substring(0, digits.length() - decimals) + "." + digits.substring(digits.length() - decimals);
            byte[] written = decimal.getBytes(StandardCharsets.US_ASCII);
            text.take(written, written.length);
            assertEquals(Double.parseDouble(decimal), text.number(0, written.length), 0, decimal);
        }
    }

    @Test
    void aLongJournalReadByManyThreadsIsReadInItsOrderAndItsDamageIsNamed() {
        ByteArrayOutputStream journal = new ByteArrayOutputStream();
        List<Integer> starts = new ArrayList<>();
        long previous = Sum.NONE;
        for (int n = 1; n <= 3_000; n++) {
            starts.add(journal.size());
            byte[] line = Line.encode(new Entry(n, AT, n, "4f00", EveryKind.trial(n, 48 + n / 7.0)), previous);
            previous = Sum.read(line, Line.sumPlace(line.length - 1));
            journal.write(line, 0, line.length);
        }
        byte[] bytes = journal.toByteArray();
        assertTrue(bytes.length > 1 << 19, "long enough for more than one thread");
        assertTrue(JournalReader.of("journal.jsonl", bytes, Optional.empty()).isSound());
        bytes[starts.get(1_999) + 40] ^= 1;
        Reading reading = JournalReader.of("journal.jsonl", bytes, Optional.empty());
        assertEquals(List.of(2_000), reading.damagedLines());
        assertEquals(2_999, reading.entries().size());
        for (int i = 0; i < 2_999; i++) {
            assertEquals(i < 1_999 ? i + 1 : i + 2, reading.entries().get(i).sequence());
        }
    }
}
