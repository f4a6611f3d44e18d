package coldproof.files.yaml;

import java.io.Reader;

/**
 * Hands out a text in pieces that end with no first half of a character of two halves. The YAML scanner fills its buffer to the brim and, when the
 * last place holds a first half, asks for the second one behind the end of that buffer: a picture character at place 1025 would end the program.
 */
final class WholeCharacters extends Reader {
    private final String text;
    private int next;

    WholeCharacters(String text) {
        this.text = text;
    }

    @Override
    public int read(char[] into, int from, int most) {
        if (most == 0 || next == text.length()) {
            return most == 0 ? 0 : -1;
        }
        // One place stays free, for the scanner's question after a lone half at the end of the text.
        int length = Math.min(Math.max(1, most - 1), text.length() - next);
        if (length > 1 && Character.isHighSurrogate(text.charAt(next + length - 1))) {
            length--;
        }
        text.getChars(next, next + length, into, from);
        next += length;
        return length;
    }

    @Override
    public void close() {
        next = text.length();
    }
}
