package coldproof.job;

import coldproof.files.table.TableReader;
import coldproof.quantity.Refused;
import java.nio.file.Path;
import java.util.List;

/** The columns of a table, for offering their names. */
public final class TableColumns {
    private TableColumns() {}

    /** The names in the heading; none where the table cannot be read. */
    public static List<String> of(Path file) {
        try {
            return TableReader.read(file).columns();
        } catch (Refused unreadable) {
            return List.of(); // offering nothing is right; the verb itself says what is wrong
        }
    }
}
