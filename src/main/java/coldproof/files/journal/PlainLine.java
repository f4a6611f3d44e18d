package coldproof.files.journal;

import coldproof.study.Entry;
import coldproof.study.Event;
import coldproof.study.EventKind;
import java.time.DateTimeException;
import java.util.Optional;

/** Reads lines that are written as this version writes them, which nearly all are; used for one line after the other. */
final class PlainLine {
    private final PlainText text = new PlainText();
    private final PlainFields fields = new PlainFields(text);
    private final PlainFields data = new PlainFields(text);

    /** The line in these bytes, which are intact; empty when it is of another form, which only the general reader understands. */
    Optional<Line> read(byte[] bytes, int from, int to) {
        try {
            text.take(bytes, to);
            if (fields.take(from, "data", data) != to) {
                return Optional.empty();
            }
            fields.leave("data");
            Optional<EventKind> kind = EventKind.of(fields.text("kind"));
            if (kind.isEmpty()) {
                return Optional.empty();
            }
            Event event = Payload.read(kind.get(), data);
            data.refuseMore();
            Entry entry = new Entry(fields.whole("n"), fields.time("at"), fields.number("mono"), fields.text("process"), event);
            fields.leave("prev");
            fields.leave("sum");
            fields.refuseMore();
            return Optional.of(new Line(entry, Sum.read(bytes, Line.previousPlace(to)), Sum.read(bytes, Line.sumPlace(to)), ""));
        } catch (IllegalArgumentException | DateTimeException otherForm) {
            return Optional.empty(); // the general reader says what is wrong, if anything is
        }
    }
}
