package coldproof.files.table;

import java.util.ArrayList;
import java.util.List;

/**
 * One record of delimited text with the places of its cells.
 *
 * @param line line of its first character, first is 1
 * @param cells the cells, quotes taken off
 * @param source first line of the record as it stands in the file
 * @param unclosed whether a quote was opened and never closed
 */
record DelimitedLine(int line, List<Cell> cells, String source, boolean unclosed) {
    private static final char NO_DELIMITER = '\0';

    /**
     * A cell and where it starts.
     *
     * @param text what it holds, quotes taken off
     * @param line first is 1
     * @param column first is 1
     */
    record Cell(String text, int line, int column) {}

    boolean isBlank() {
        return filledWidth() == 0;
    }

    List<String> texts() {
        return cells.stream().map(Cell::text).toList();
    }

    boolean isRemark() {
        return source.stripLeading().startsWith("#");
    }

    /** Number of cells up to the last that holds something. */
    int filledWidth() {
        int width = cells.size();
        while (width > 0 && cells.get(width - 1).text().isBlank()) {
            width--;
        }
        return width;
    }

    /**
     * Splits a text into records, by the quoting rules of RFC 4180: a cell that begins with a double quote ends at the next one that is
     * not doubled and may hold delimiters and line ends. A quote inside an unquoted cell is an ordinary character. Line ends are LF, CRLF
     * or CR. A remark line ({@code #}) is one record whatever it holds, so that a stray quote in it does no harm.
     *
     * @param text the whole text without byte order mark
     * @param delimiter the delimiter, or zero for one cell a line
     * @param atMost stops after this many records
     */
    static List<DelimitedLine> split(String text, char delimiter, int atMost) {
        List<DelimitedLine> lines = new ArrayList<>();
        Splitter splitter = new Splitter(text, delimiter);
        while (lines.size() < atMost && splitter.at < text.length()) {
            lines.add(splitter.next());
        }
        return lines;
    }

    private static final class Splitter {
        private final String text;
        private final char delimiter;
        private int at;
        private int line = 1;
        private int lineStart;
        private boolean broken;

        Splitter(String text, char delimiter) {
            this.text = text;
            this.delimiter = delimiter;
        }

        DelimitedLine next() {
            int first = line;
            lineStart = at;
            String source = text.substring(at, endOfLine(at));
            if (source.stripLeading().startsWith("#")) {
                Splitter remark = new Splitter(source.stripLeading().substring(1).stripLeading(), delimiter);
                at += source.length();
                skipLineEnd();
                return new DelimitedLine(first, remark.cells(), source, false);
            }
            List<Cell> cells = cells();
            boolean unclosed = broken;
            broken = false;
            skipLineEnd();
            return new DelimitedLine(first, cells, source, unclosed);
        }

        private List<Cell> cells() {
            List<Cell> cells = new ArrayList<>();
            do {
                int cellLine = line;
                int column = at - lineStart + 1;
                StringBuilder cell = new StringBuilder();
                broken |= !readCell(cell);
                cells.add(new Cell(cell.toString(), cellLine, column));
            } while (passDelimiter());
            return cells;
        }

        private boolean readCell(StringBuilder cell) {
            int quote = at;
            while (quote < text.length() && text.charAt(quote) == ' ' && delimiter != ' ') {
                quote++;
            }
            boolean closed = true;
            if (quote < text.length() && text.charAt(quote) == '"') {
                at = quote + 1;
                closed = readQuoted(cell);
            }
            while (at < text.length() && !endsCell(text.charAt(at))) {
                cell.append(text.charAt(at++));
            }
            return closed;
        }

        private boolean readQuoted(StringBuilder cell) {
            while (at < text.length()) {
                char c = text.charAt(at++);
                if (c == '"') {
                    if (at < text.length() && text.charAt(at) == '"') {
                        at++;
                    } else {
                        return true;
                    }
                } else if (c == '\n' || c == '\r' && !(at < text.length() && text.charAt(at) == '\n')) {
                    line++;
                    lineStart = at;
                }
                cell.append(c);
            }
            return false;
        }

        private boolean endsCell(char c) {
            return c == '\n' || c == '\r' || c == delimiter && delimiter != NO_DELIMITER;
        }

        private boolean passDelimiter() {
            if (delimiter != NO_DELIMITER && at < text.length() && text.charAt(at) == delimiter) {
                at++;
                return true;
            }
            return false;
        }

        private int endOfLine(int from) {
            int end = from;
            while (end < text.length() && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
                end++;
            }
            return end;
        }

        private void skipLineEnd() {
            if (at >= text.length()) {
                return;
            }
            if (text.charAt(at) == '\r' && at + 1 < text.length() && text.charAt(at + 1) == '\n') {
                at++;
            }
            at++;
            line++;
        }
    }
}
