package coldproof.report.json;

import coldproof.report.export.TidyTable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The document of {@code journal export --json}: every table as a list of objects under its name, the dictionary among them. */
public final class ExportJson {
    private ExportJson() {}

    /** The tables. */
    public static JsonObject of(List<TidyTable> tables) {
        JsonObject json = new JsonObject();
        tables.forEach(table -> json.put(table.name(), rows(table)));
        return json;
    }

    private static List<JsonObject> rows(TidyTable table) {
        List<JsonObject> rows = new ArrayList<>();
        for (List<Optional<Object>> row : table.rows()) {
            JsonObject object = new JsonObject();
            for (int i = 0; i < row.size(); i++) {
                object.put(table.columns().get(i).name(), row.get(i));
            }
            rows.add(object);
        }
        return rows;
    }
}
