package coldproof.face.console;

import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** What a terminal would show: follows the control sequences of ECMA-48 that the console uses. Fails on one it does not know. */
final class ScreenImage extends OutputStream {
    private final CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder();
    private final ByteBuffer bytes = ByteBuffer.allocate(16);
    private final StringBuilder sequence = new StringBuilder();
    private char[][] cells;
    private int row;
    private int column;
    private int bells;

    ScreenImage(int rows, int columns) {
        resize(rows, columns);
    }

    synchronized void resize(int rows, int columns) {
        cells = new char[rows][columns];
        for (char[] line : cells) {
            Arrays.fill(line, ' ');
        }
        row = 0;
        column = 0;
    }

    synchronized String text() {
        StringBuilder text = new StringBuilder();
        for (char[] line : cells) {
            text.append(new String(line).stripTrailing()).append('\n');
        }
        return text.toString();
    }

    synchronized int bells() {
        return bells;
    }

    @Override
    public synchronized void write(int b) {
        bytes.put((byte) b).flip();
        CharBuffer chars = CharBuffer.allocate(2);
        decoder.decode(bytes, chars, false);
        bytes.compact();
        chars.flip();
        while (chars.hasRemaining()) {
            take(chars.get());
        }
    }

    private void take(char c) {
        if (sequence.length() > 0) {
            sequence.append(c);
            boolean title = sequence.length() > 1 && sequence.charAt(1) == ']';
            boolean csi = sequence.length() > 1 && sequence.charAt(1) == '[';
            boolean charset = sequence.length() == 2 && (c == '(' || c == ')');
            if (title ? c == 7 : csi ? sequence.length() > 2 && c >= '@' && c <= '~' : !charset) {
                obey(sequence.toString());
                sequence.setLength(0);
            }
            return;
        }
        switch (c) {
            case 27 -> sequence.append(c);
            case 7 -> bells++;
            case '\r' -> column = 0;
            case '\n' -> down();
            case '\b' -> column = Math.max(0, column - 1);
            case '\t' -> column = Math.min(cells[0].length - 1, (column / 8 + 1) * 8);
            default -> put(c);
        }
    }

    private void put(char c) {
        if (c < ' ') {
            return;
        }
        if (column >= cells[0].length) {
            column = 0;
            down();
        }
        cells[row][column++] = c;
    }

    private void down() {
        if (row < cells.length - 1) {
            row++;
            return;
        }
        System.arraycopy(cells, 1, cells, 0, cells.length - 1);
        cells[cells.length - 1] = blank();
    }

    private void obey(String code) {
        char last = code.charAt(code.length() - 1);
        if (code.charAt(1) != '[') {
            return; // keypad modes, character sets, titles: nothing is seen of them
        }
        String inner = code.substring(2, code.length() - 1);
        if (inner.startsWith("?") || inner.startsWith(">") || inner.startsWith("=") || inner.startsWith("<")) {
            return;
        }
        String[] parts = inner.split(";", -1);
        int first = number(parts[0], 1);
        switch (last) {
            case 'H', 'f' -> {
                row = Math.min(cells.length - 1, first - 1);
                column = Math.min(cells[0].length - 1, parts.length > 1 ? number(parts[1], 1) - 1 : 0);
            }
            case 'A' -> row = Math.max(0, row - first);
            case 'B' -> row = Math.min(cells.length - 1, row + first);
            case 'C' -> column = Math.min(cells[0].length - 1, column + first);
            case 'D' -> column = Math.max(0, column - first);
            case 'G' -> column = first - 1;
            case 'd' -> row = Math.min(cells.length - 1, first - 1);
            case 'K' -> eraseLine(number(parts[0], 0));
            case 'J' -> eraseScreen(number(parts[0], 0));
            case 'P' -> delete(first);
            case '@' -> insert(first);
            case 'L' -> insertLines(first);
            case 'M' -> deleteLines(first);
            case 'X' -> Arrays.fill(cells[row], column, Math.min(cells[0].length, column + first), ' ');
            case 'm', 'h', 'l', 'r', 'n', 'c', 't', 'q', 'u' -> { }
            default -> throw new AssertionError("unknown control sequence ESC " + code.substring(1));
        }
    }

    private void insertLines(int count) {
        for (int i = cells.length - 1; i >= row; i--) {
            cells[i] = i - count >= row ? cells[i - count] : blank();
        }
    }

    private void deleteLines(int count) {
        for (int i = row; i < cells.length; i++) {
            cells[i] = i + count < cells.length ? cells[i + count] : blank();
        }
    }

    private char[] blank() {
        char[] line = new char[cells[0].length];
        Arrays.fill(line, ' ');
        return line;
    }

    private static int number(String text, int otherwise) {
        return text.isEmpty() ? otherwise : Integer.parseInt(text);
    }

    private void eraseLine(int how) {
        int from = how == 0 ? Math.min(column, cells[0].length) : 0;
        int to = how == 1 ? Math.min(column + 1, cells[0].length) : cells[0].length;
        Arrays.fill(cells[row], from, to, ' ');
    }

    private void eraseScreen(int how) {
        eraseLine(how);
        for (int i = how == 0 ? row + 1 : 0; i < (how == 1 ? row : cells.length); i++) {
            Arrays.fill(cells[i], ' ');
        }
    }

    private void delete(int count) {
        char[] line = cells[row];
        int n = Math.min(count, line.length - column);
        System.arraycopy(line, column + n, line, column, line.length - column - n);
        Arrays.fill(line, line.length - n, line.length, ' ');
    }

    private void insert(int count) {
        char[] line = cells[row];
        int n = Math.min(count, line.length - column);
        System.arraycopy(line, column, line, column + n, line.length - column - n);
        Arrays.fill(line, column, column + n, ' ');
    }
}
