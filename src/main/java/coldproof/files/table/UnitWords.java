package coldproof.files.table;

import coldproof.trace.TraceUnit;
import java.util.List;

/** Tells a line of units below the column names from a line of data. */
final class UnitWords {
    private UnitWords() {}

    /** Whether every cell is a unit, in brackets or not, or blank, and at least one is a unit. */
    static boolean isLineOfUnits(List<String> cells) {
        boolean any = false;
        for (String cell : cells) {
            String text = cell.strip();
            boolean none = text.isEmpty() || text.equals("-");
            if (!none && !TraceUnit.isUnit(text)) {
                return false;
            }
            any |= !none;
        }
        return any;
    }
}
