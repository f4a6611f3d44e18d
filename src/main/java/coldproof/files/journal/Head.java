package coldproof.files.journal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;

/**
 * The last entry that was acknowledged: its number and sum, in a small file beside the journal. A journal that ends earlier, or has another
 * entry there, has lost its end; the journal alone could not show that. The file is written after the journal has been forced and is not
 * forced itself, so it may lag behind, never run ahead, and costs no time.
 *
 * @param sequence number of the entry
 * @param sum its sum
 */
record Head(long sequence, long sum) {
    /** All heads have the same length, so that writing one over another leaves nothing of the first. */
    private static final int LENGTH = 64;
    private static final String START = "{\"n\":";
    private static final String MIDDLE = ",\"sum\":\"";
    private static final String END = "\"}";

    /** The file of the head that belongs to this journal. */
    static Path path(Path journal) {
        String name = journal.getFileName().toString();
        String base = name.endsWith(".jsonl") ? name.substring(0, name.length() - ".jsonl".length()) : name;
        return journal.resolveSibling(base + ".head");
    }

    /** The head beside this journal; empty when there is none, or only a broken one as after a power cut. */
    static Optional<Head> read(Disk disk, Path journal) throws IOException {
        try {
            return parse(new String(disk.read(path(journal)), StandardCharsets.US_ASCII).strip());
        } catch (NoSuchFileException e) {
            return Optional.empty(); // a journal copied without it: then its end cannot be checked
        }
    }

    private static Optional<Head> parse(String text) {
        int middle = text.indexOf(MIDDLE);
        int digits = middle + MIDDLE.length();
        byte[] bytes = text.getBytes(StandardCharsets.US_ASCII);
        if (!text.startsWith(START) || middle < 0 || digits + Sum.DIGITS + END.length() != text.length() || !text.endsWith(END)
                || !Sum.standsAt(bytes, digits)) {
            return Optional.empty();
        }
        long sequence = 0;
        for (char c : text.substring(START.length(), middle).toCharArray()) {
            if (c < '0' || c > '9' || sequence > Long.MAX_VALUE / 100) {
                return Optional.empty();
            }
            sequence = sequence * 10 + (c - '0');
        }
        return Optional.of(new Head(sequence, Sum.read(bytes, digits)));
    }

    ByteBuffer bytes() {
        StringBuilder text = new StringBuilder(LENGTH).append(START).append(sequence).append(MIDDLE).append(Sum.text(sum)).append(END);
        while (text.length() < LENGTH - 1) {
            text.append(' ');
        }
        return ByteBuffer.wrap(text.append('\n').toString().getBytes(StandardCharsets.US_ASCII));
    }

    /** Opens the file for writing, or makes it. */
    static Disk.OpenFile open(Disk disk, Path journal) throws IOException {
        Path path = path(journal);
        return disk.exists(path) ? disk.open(path) : disk.create(path);
    }
}
