package coldproof.files.table;

import java.util.ArrayList;
import java.util.List;

/**
 * Which decimal marks a column and its table use, to tell a decimal comma from one between thousands.
 *
 * @param pointInColumn some number of the column has a point
 * @param pointInTable some number anywhere has a point
 * @param onlyThousands every comma in the column has three digits behind it
 */
record DecimalMarks(boolean pointInColumn, boolean pointInTable, boolean onlyThousands) {

    /** The marks of each column of a table. */
    static List<DecimalMarks> of(Table table) {
        boolean pointInTable = false;
        boolean[] pointInColumn = new boolean[table.columns().size()];
        boolean[] otherThanThousands = new boolean[pointInColumn.length];
        for (Table.Row row : table.rows()) {
            for (int i = 0; i < pointInColumn.length; i++) {
                String cell = row.text(i);
                pointInColumn[i] |= isNumberWith('.', cell);
                pointInTable |= pointInColumn[i];
                otherThanThousands[i] |= isNumberWith(',', cell) && cell.length() - cell.indexOf(',') != 4;
            }
        }
        List<DecimalMarks> marks = new ArrayList<>();
        for (int i = 0; i < pointInColumn.length; i++) {
            marks.add(new DecimalMarks(pointInColumn[i], pointInTable, !otherThanThousands[i]));
        }
        return List.copyOf(marks);
    }

    boolean commaMeansTwoThings() {
        return pointInColumn || pointInTable && onlyThousands;
    }

    String elsewhere() {
        return pointInColumn ? "other cells of the column have" : "other columns have";
    }

    static boolean isNumberWith(char mark, String cell) {
        return isNumberWith(mark, cell, 0, cell.length());
    }

    /** Whether a part of a text is a number with one such mark. */
    static boolean isNumberWith(char mark, String text, int from, int to) {
        int marks = 0;
        int digits = 0;
        for (int i = from; i < to; i++) {
            char c = text.charAt(i);
            if (c >= '0' && c <= '9') {
                digits++;
            } else if (c == mark) {
                marks++;
            } else if (!(i == from && (c == '-' || c == '+'))) {
                return false;
            }
        }
        return marks == 1 && digits > 0;
    }
}
