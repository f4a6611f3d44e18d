package coldproof.files.table;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/** The bytes of a text in another encoding as UTF-8. */
final class Utf8Stream extends InputStream {
    private final Reader reader;
    private final char[] chars = new char[1 << 15];
    private byte[] bytes = new byte[0];
    private int at;

    Utf8Stream(InputStream in, Charset charset) {
        reader = new InputStreamReader(in, charset);
    }

    @Override
    public int read() throws IOException {
        return more() ? bytes[at++] & 0xFF : -1;
    }

    @Override
    public int read(byte[] to, int offset, int length) throws IOException {
        if (length == 0) {
            return 0;
        }
        if (!more()) {
            return -1;
        }
        int count = Math.min(length, bytes.length - at);
        System.arraycopy(bytes, at, to, offset, count);
        at += count;
        return count;
    }

    private boolean more() throws IOException {
        while (at >= bytes.length) {
            int count = reader.read(chars, 0, chars.length - 1);
            if (count < 0) {
                return false;
            }
            if (count > 0 && Character.isHighSurrogate(chars[count - 1])) {
                int low = reader.read();
                if (low >= 0) {
                    chars[count++] = (char) low;
                }
            }
            bytes = new String(chars, 0, count).getBytes(StandardCharsets.UTF_8);
            at = 0;
        }
        return true;
    }

    @Override
    public void close() throws IOException {
        reader.close();
    }
}
