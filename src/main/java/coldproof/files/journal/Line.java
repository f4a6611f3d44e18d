package coldproof.files.journal;

import coldproof.study.Entry;
import coldproof.study.Event;
import coldproof.study.EventKind;
import coldproof.study.UnknownEvent;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.Optional;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.json.JsonFactory;

/**
 * One line of a journal that is intact.
 *
 * <p>{@code {"n":…,"at":"…","mono":…,"process":"…","kind":"…","data":{…},"prev":"…","sum":"…"}} and a line feed. {@code prev} is the sum of
 * the line before; {@code sum} is over all bytes of the line before {@code ,"sum":}, so over {@code prev} too. The last 52 bytes have fixed
 * places, so that a line is checked before it is understood.
 *
 * @param entry what it says
 * @param previous sum of the line before, as the line names it
 * @param sum its own sum
 * @param notUnderstood why its data could not be understood although no byte is wrong; empty for all but alien lines
 */
record Line(Entry entry, long previous, long sum, String notUnderstood) {
    /** {@code ,"prev":"} + 16 + {@code "}. */
    private static final byte[] PREVIOUS = ",\"prev\":\"".getBytes(StandardCharsets.US_ASCII);
    private static final byte[] SUM = "\",\"sum\":\"".getBytes(StandardCharsets.US_ASCII);
    private static final byte[] END = "\"}".getBytes(StandardCharsets.US_ASCII);
    /** Bytes from the comma before {@code "sum"} to the closing brace. */
    static final int TAIL = SUM.length - 1 + Sum.DIGITS + END.length;
    private static final int PREVIOUS_AND_TAIL = PREVIOUS.length + Sum.DIGITS + SUM.length + Sum.DIGITS + END.length;

    /** The bytes of a line, its line feed included. */
    static byte[] encode(Entry entry, long previous) {
        StringBuilder text = new StringBuilder(320);
        Event event = entry.event();
        String kind = event instanceof UnknownEvent unknown ? unknown.word() : event.kind().word();
        JsonText line = new JsonText(text);
        line.whole("n", entry.sequence()).text("at", Payload.time(entry.at())).number("mono", entry.monotonicSeconds())
                .text("process", entry.process()).text("kind", kind);
        text.append(",\"data\":");
        Payload.write(text, event);
        line.text("prev", Sum.text(previous));
        byte[] covered = text.toString().getBytes(StandardCharsets.UTF_8);
        for (byte each : covered) {
            if (each == '\n') {
                throw new IllegalArgumentException("the data of an entry hold a line feed: " + text);
            }
        }
        byte[] tail = tail(new Sum().of(covered, 0, covered.length));
        byte[] bytes = new byte[covered.length + tail.length + 1];
        System.arraycopy(covered, 0, bytes, 0, covered.length);
        System.arraycopy(tail, 0, bytes, covered.length, tail.length);
        bytes[bytes.length - 1] = '\n';
        return bytes;
    }

    /** The same line after another one: its text as it was written, its line feed included, but with new sums. */
    static byte[] relinked(byte[] text, long previous) {
        byte[] bytes = Arrays.copyOf(text, text.length + 1);
        byte[] digits = Sum.text(previous).getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(digits, 0, bytes, previousPlace(text.length), digits.length);
        byte[] tail = tail(new Sum().of(bytes, 0, text.length - TAIL));
        System.arraycopy(tail, 0, bytes, text.length - TAIL, tail.length);
        bytes[text.length] = '\n';
        return bytes;
    }

    /** The last bytes of a line whose other bytes have this sum, without line feed. */
    static byte[] tail(long sum) {
        return (",\"sum\":\"" + Sum.text(sum) + "\"}").getBytes(StandardCharsets.US_ASCII);
    }

    /** Whether these bytes, without line feed, end as a line ends. */
    static boolean hasTail(byte[] bytes, int from, int to) {
        return to - from > PREVIOUS_AND_TAIL && stands(END, bytes, to - END.length) && Sum.standsAt(bytes, sumPlace(to))
                && stands(SUM, bytes, sumPlace(to) - SUM.length) && hasPrevious(bytes, to);
    }

    private static boolean hasPrevious(byte[] bytes, int to) {
        return Sum.standsAt(bytes, previousPlace(to)) && stands(PREVIOUS, bytes, previousPlace(to) - PREVIOUS.length);
    }

    private static boolean stands(byte[] what, byte[] bytes, int at) {
        for (int i = 0; i < what.length; i++) {
            if (bytes[at + i] != what[i]) {
                return false;
            }
        }
        return true;
    }

    static int sumPlace(int to) {
        return to - END.length - Sum.DIGITS;
    }

    static int previousPlace(int to) {
        return sumPlace(to) - SUM.length - Sum.DIGITS;
    }

    /** Whether these bytes, without line feed, are a whole line with the right sum. */
    static boolean isIntact(byte[] bytes, int from, int to, Sum sums) {
        return hasTail(bytes, from, to) && sums.of(bytes, from, to - TAIL) == Sum.read(bytes, sumPlace(to));
    }

    /**
     * The line in these bytes, which are intact.
     *
     * @throws IllegalArgumentException if the envelope cannot be understood, so that there is not even a sequence number
     */
    static Line read(JsonFactory json, byte[] bytes, int from, int to) {
        Envelope envelope = new Envelope(bytes, from);
        try (JsonParser parser = json.createParser(ObjectReadContext.empty(), bytes, from, to - from)) {
            envelope.read(parser);
        } catch (JacksonException e) {
            throw new IllegalArgumentException("not JSON: " + e.getOriginalMessage(), e);
        }
        return envelope.line(Sum.read(bytes, previousPlace(to)), Sum.read(bytes, sumPlace(to)));
    }

    /** The fields of a line as they come. */
    private static final class Envelope {
        private final byte[] bytes;
        private final int from;
        private Fields fields;
        private Fields data;
        private String rawData = "";

        private Envelope(byte[] bytes, int from) {
            this.bytes = bytes;
            this.from = from;
        }

        private void read(JsonParser parser) {
            if (parser.nextToken() != JsonToken.START_OBJECT) {
                throw new IllegalArgumentException("not a JSON object");
            }
            fields = JsonFields.of(parser, "data", () -> {
                int start = from + (int) parser.currentTokenLocation().getByteOffset();
                data = JsonFields.of(parser);
                int end = from + (int) parser.currentTokenLocation().getByteOffset() + 1;
                rawData = new String(bytes, start, end - start, StandardCharsets.UTF_8);
            });
            if (data == null) {
                throw new IllegalArgumentException("the field \"data\" is missing");
            }
            if (parser.nextToken() != null) {
                throw new IllegalArgumentException("something follows the JSON object");
            }
        }

        private Line line(long previous, long sum) {
            String word = fields.text("kind");
            Optional<EventKind> kind = EventKind.of(word);
            Event event;
            String notUnderstood = "";
            try {
                event = kind.isPresent() ? Payload.read(kind.get(), data) : new UnknownEvent(word, rawData);
            } catch (IllegalArgumentException e) {
                event = new UnknownEvent(word, rawData);
                notUnderstood = e.getMessage();
            }
            OffsetDateTime at = fields.time("at");
            return new Line(new Entry(fields.whole("n"), at, fields.number("mono"), fields.text("process"), event), previous, sum,
                    notUnderstood);
        }
    }
}
