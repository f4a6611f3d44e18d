package coldproof.files.journal;

import java.util.Optional;
import tools.jackson.core.json.JsonFactory;

/** Reads lines of the form this version writes the short way, and all others with the general reader; both give the same. */
final class EitherForm implements LineScan.LineReader {
    private final PlainLine plain = new PlainLine();
    private JsonFactory json;

    @Override
    public Line read(byte[] bytes, int from, int to) {
        Optional<Line> line = plain.read(bytes, from, to);
        return line.isPresent() ? line.get() : general(bytes, from, to);
    }

    private Line general(byte[] bytes, int from, int to) {
        if (json == null) {
            json = JsonFactory.builder().build(); // most journals never need it, and making it takes time
        }
        return Line.read(json, bytes, from, to);
    }
}
