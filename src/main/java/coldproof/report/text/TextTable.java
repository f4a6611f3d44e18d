package coldproof.report.text;

import java.util.ArrayList;
import java.util.List;

/** A table of plain text: words to the left, numbers to the right, two spaces between columns. Not thread-safe. */
public final class TextTable {
    private final List<String> header;
    private final boolean[] right;
    private final List<List<String>> furtherHeads = new ArrayList<>();
    private final List<List<String>> rows = new ArrayList<>();

    /** A table with these column heads; a head that starts with {@code >} is for numbers and aligns right. */
    public TextTable(String... heads) {
        header = new ArrayList<>();
        right = new boolean[heads.length];
        for (int i = 0; i < heads.length; i++) {
            right[i] = heads[i].startsWith(">");
            header.add(right[i] ? heads[i].substring(1) : heads[i]);
        }
    }

    /** Adds a further line to the heads. */
    public TextTable head(String... cells) {
        furtherHeads.add(List.of(cells));
        return this;
    }

    /** Adds a row with one cell a column. */
    public TextTable row(String... cells) {
        if (cells.length != header.size()) {
            throw new IllegalArgumentException(cells.length + " cells for " + header.size() + " columns");
        }
        rows.add(List.of(cells));
        return this;
    }

    /** The table, each line begun with the indent and ended; trailing spaces removed. */
    public String text(String indent) {
        int[] widths = new int[header.size()];
        measure(header, widths);
        furtherHeads.forEach(row -> measure(row, widths));
        rows.forEach(row -> measure(row, widths));
        StringBuilder out = new StringBuilder();
        line(header, widths, indent, out);
        furtherHeads.forEach(row -> line(row, widths, indent, out));
        int total = 2 * (widths.length - 1);
        for (int width : widths) {
            total += width;
        }
        out.append(indent).append("-".repeat(total)).append('\n');
        rows.forEach(row -> line(row, widths, indent, out));
        return out.toString();
    }

    private static void measure(List<String> row, int[] widths) {
        for (int i = 0; i < widths.length; i++) {
            widths[i] = Math.max(widths[i], row.get(i).codePointCount(0, row.get(i).length()));
        }
    }

    private void line(List<String> row, int[] widths, String indent, StringBuilder out) {
        StringBuilder line = new StringBuilder(indent);
        for (int i = 0; i < widths.length; i++) {
            String cell = row.get(i);
            String pad = " ".repeat(widths[i] - cell.codePointCount(0, cell.length()));
            line.append(i == 0 ? "" : "  ").append(right[i] ? pad + cell : cell + pad);
        }
        out.append(line.toString().stripTrailing()).append('\n');
    }
}
