package coldproof.report.plain;

import coldproof.report.page.Block;
import coldproof.report.text.Harmless;
import coldproof.report.text.TextTable;
import coldproof.report.text.Wrap;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A table of plain text that fits: heads and then cells are broken into lines; a table that fits nowhere becomes a list, row by row. */
final class PlainGrid {
    private static final int GAP = 2;
    private final Block.Grid grid;
    private final int columns;
    private final int[] widths;

    private PlainGrid(Block.Grid grid, int columns) {
        this.grid = harmless(grid);
        this.columns = columns;
        this.widths = new int[grid.columns().size()];
    }

    static String of(Block.Grid grid, int columns) {
        return new PlainGrid(grid, columns).text();
    }

    private static Block.Grid harmless(Block.Grid grid) {
        return new Block.Grid(grid.caption(), grid.columns().stream().map(column -> new Block.Column(Harmless.line(column.head()), column.number())).toList(),
                grid.rows().stream().map(row -> row.stream().map(Harmless::line).toList()).toList());
    }

    private String text() {
        for (int i = 0; i < widths.length; i++) {
            widths[i] = Math.max(length(grid.columns().get(i).head()), widestCell(i, false));
        }
        shrink(true);
        shrink(false);
        return total() <= columns ? table() : list();
    }

    /** Makes the widest column narrower until the table fits, or none can be: no narrower than its cells, or than their longest word. */
    private void shrink(boolean headsOnly) {
        int[] least = new int[widths.length];
        for (int i = 0; i < least.length; i++) {
            least[i] = Math.max(longestWord(grid.columns().get(i).head()), widestCell(i, !headsOnly));
        }
        while (total() > columns) {
            int widest = -1;
            for (int i = 0; i < widths.length; i++) {
                if (widths[i] > least[i] && (widest < 0 || widths[i] > widths[widest])) {
                    widest = i;
                }
            }
            if (widest < 0) {
                return;
            }
            widths[widest]--;
        }
    }

    private int total() {
        return Arrays.stream(widths).sum() + GAP * (widths.length - 1);
    }

    private int widestCell(int column, boolean words) {
        return grid.rows().stream().map(row -> row.get(column)).mapToInt(cell -> words ? longestWord(cell) : length(cell)).max().orElse(0);
    }

    private static int longestWord(String text) {
        return Arrays.stream(text.split(" ")).mapToInt(PlainGrid::length).max().orElse(0);
    }

    private static int length(String text) {
        return text.codePointCount(0, text.length());
    }

    private String table() {
        List<String> heads = new ArrayList<>();
        List<List<String>> lines = broken(grid.columns().stream().map(Block.Column::head).toList());
        for (int i = 0; i < widths.length; i++) {
            heads.add((grid.columns().get(i).number() ? ">" : "") + lines.get(0).get(i));
        }
        TextTable table = new TextTable(heads.toArray(String[]::new));
        lines.stream().skip(1).forEach(line -> table.head(line.toArray(String[]::new)));
        grid.rows().forEach(row -> broken(row).forEach(line -> table.row(line.toArray(String[]::new))));
        return table.text("");
    }

    /** The lines a row takes when its cells are broken to the widths. */
    private List<List<String>> broken(List<String> row) {
        List<String[]> cells = new ArrayList<>();
        int most = 1;
        for (int i = 0; i < row.size(); i++) {
            StringBuilder lines = new StringBuilder();
            Wrap.indented(row.get(i), "", Math.max(1, widths[i]), lines);
            cells.add(lines.toString().split("\n"));
            most = Math.max(most, cells.get(i).length);
        }
        List<List<String>> lines = new ArrayList<>();
        for (int line = 0; line < most; line++) {
            int at = line;
            lines.add(cells.stream().map(cell -> at < cell.length ? cell[at] : "").toList());
        }
        return lines;
    }

    private String list() {
        StringBuilder out = new StringBuilder();
        for (List<String> row : grid.rows()) {
            for (int i = 0; i < row.size(); i++) {
                if (!row.get(i).isEmpty()) {
                    Wrap.hanging(i == 0 ? "- " : "  ", grid.columns().get(i).head() + ": " + row.get(i), columns, out);
                }
            }
        }
        return out.toString();
    }
}
