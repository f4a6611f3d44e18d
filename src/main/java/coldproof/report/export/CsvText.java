package coldproof.report.export;

import coldproof.report.text.Harmless;
import java.util.List;
import java.util.Optional;

/**
 * A tidy table as comma-separated text (RFC 4180 but with line feeds): first row the names, numbers with a decimal point, an empty cell for
 * what is missing. Control characters in text are shown as symbols, and text that a spreadsheet would take for a formula begins with an
 * apostrophe; the JSON form has the text as it is.
 */
public final class CsvText {
    private static final String FORMULA_STARTS = "=+-@\uff1d\uff0b\uff0d\uff20"; // with the wide forms, which some spreadsheets narrow

    private CsvText() {}

    /** The table as text. */
    public static String of(TidyTable table) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < table.columns().size(); i++) {
            out.append(i == 0 ? "" : ",").append(text(table.columns().get(i).name()));
        }
        out.append('\n');
        for (List<Optional<Object>> row : table.rows()) {
            for (int i = 0; i < row.size(); i++) {
                out.append(i == 0 ? "" : ",").append(row.get(i).map(CsvText::cell).orElse(""));
            }
            out.append('\n');
        }
        return out.toString();
    }

    private static String cell(Object value) {
        return value instanceof String text ? text(text) : value.toString();
    }

    private static String text(String raw) {
        String text = Harmless.line(raw);
        String visible = text.strip();
        if (!visible.isEmpty() && FORMULA_STARTS.indexOf(visible.charAt(0)) >= 0) {
            text = "'" + text;
        }
        boolean plain = text.indexOf(',') < 0 && text.indexOf('"') < 0 && text.indexOf(';') < 0 && text.equals(text.strip());
        return plain ? text : "\"" + text.replace("\"", "\"\"") + "\"";
    }
}
