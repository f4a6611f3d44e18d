package coldproof.files.table;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/**
 * How the bytes of a text are to be read.
 *
 * @param charset UTF-8, UTF-16 of either byte order, or Latin-1
 * @param markBytes length of the byte order mark to skip, 0 to 3
 */
record TextEncoding(Charset charset, int markBytes) {

    /**
     * Tells the encoding from the first bytes: a byte order mark decides; zero bytes at every other place mean UTF-16; what is no UTF-8
     * is Latin-1. A character cut off at the end of the sample is forgiven.
     *
     * @param sample first bytes of the file
     * @param length how many of them count
     */
    static TextEncoding of(byte[] sample, int length) {
        if (startsWith(sample, length, 0xEF, 0xBB, 0xBF)) {
            return new TextEncoding(StandardCharsets.UTF_8, 3);
        }
        if (startsWith(sample, length, 0xFE, 0xFF)) {
            return new TextEncoding(StandardCharsets.UTF_16BE, 2);
        }
        if (startsWith(sample, length, 0xFF, 0xFE)) {
            return new TextEncoding(StandardCharsets.UTF_16LE, 2);
        }
        int[] zeros = new int[2];
        for (int i = 0; i < length; i++) {
            if (sample[i] == 0) {
                zeros[i & 1]++;
            }
        }
        int half = length / 2;
        if (half > 0 && zeros[1] > 0.4 * half && zeros[0] < 0.1 * half) {
            return new TextEncoding(StandardCharsets.UTF_16LE, 0);
        }
        if (half > 0 && zeros[0] > 0.4 * half && zeros[1] < 0.1 * half) {
            return new TextEncoding(StandardCharsets.UTF_16BE, 0);
        }
        return new TextEncoding(isUtf8(sample, length) ? StandardCharsets.UTF_8 : StandardCharsets.ISO_8859_1, 0);
    }

    String decode(byte[] bytes) {
        return new String(bytes, markBytes, bytes.length - markBytes, charset);
    }

    private static boolean startsWith(byte[] sample, int length, int... mark) {
        if (length < mark.length) {
            return false;
        }
        for (int i = 0; i < mark.length; i++) {
            if ((sample[i] & 0xFF) != mark[i]) {
                return false;
            }
        }
        return true;
    }

    private static boolean isUtf8(byte[] sample, int length) {
        int end = length;
        int start = length - 1;
        while (start >= 0 && start > length - 4 && (sample[start] & 0xC0) == 0x80) {
            start--;
        }
        if (start >= 0 && (sample[start] & 0xFF) >= 0xC2 && length - start < lengthOfUtf8(sample[start])) {
            end = start; // a character the sample cut off
        }
        try {
            StandardCharsets.UTF_8.newDecoder().onMalformedInput(CodingErrorAction.REPORT).decode(ByteBuffer.wrap(sample, 0, end));
            return true;
        } catch (CharacterCodingException notUtf8) {
            return false; // the answer, not a failure: the text is Latin-1
        }
    }

    private static int lengthOfUtf8(byte lead) {
        int bits = lead & 0xFF;
        return bits >= 0xF0 ? 4 : bits >= 0xE0 ? 3 : 2;
    }
}
