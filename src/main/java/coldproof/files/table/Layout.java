package coldproof.files.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * How a delimited text is laid out, found from its first lines.
 *
 * @param delimiter comma, semicolon, tab, vertical bar, or zero when each line is a single cell
 * @param headingLine line of the column names, first is 1; 0 when there are none
 * @param columns names as written, blanks taken off their ends; a column without a name is called by its number
 * @param units units given in a line of their own below the names, else empty texts
 * @param firstDataLine no line before this one holds data
 */
record Layout(char delimiter, int headingLine, List<String> columns, List<String> units, int firstDataLine) {
    private static final char[] DELIMITERS = {'\t', ';', ',', '|'};
    /** Lines looked at: enough for any preamble, few enough to be quick. */
    static final int SAMPLE_LINES = 200;

    /**
     * Finds the layout.
     *
     * @param sample the beginning of the text, whole lines
     */
    static Layout of(String sample) {
        char best = '\0';
        double bestScore = 0;
        List<DelimitedLine> lines = List.of();
        for (char delimiter : DELIMITERS) {
            if (sample.indexOf(delimiter) >= 0) { // else every line is a single cell
                List<DelimitedLine> split = DelimitedLine.split(sample, delimiter, SAMPLE_LINES);
                double score = score(split);
                if (score > bestScore) {
                    best = delimiter;
                    bestScore = score;
                    lines = split;
                }
            }
        }
        lines = best == '\0' ? DelimitedLine.split(sample, best, SAMPLE_LINES) : lines;
        return withHeading(best, lines, usualWidth(lines));
    }

    /** Share of lines with the usual number of cells; none where that number is one, or where the first such line is not followed. */
    private static double score(List<DelimitedLine> lines) {
        int width = usualWidth(lines);
        if (width < 2) {
            return 0;
        }
        int first = firstOfWidth(lines, width);
        int agreeing = 0;
        int all = 0;
        for (DelimitedLine line : lines) {
            if (!line.isRemark() && !line.isBlank()) {
                all++;
                agreeing += line.cells().size() == width ? 1 : 0;
            }
        }
        boolean headingAgrees = first >= 0 && numbersIn(lines.get(first)) * 2 <= lines.get(first).filledWidth();
        // A decimal comma splits data lines evenly too, but not the line of names: names weigh more than many equal lines.
        return (double) agreeing / all + (headingAgrees ? 1 : 0) + 1e-6 * width;
    }

    private static int firstOfWidth(List<DelimitedLine> lines, int width) {
        for (int i = 0; i < lines.size(); i++) {
            if (!lines.get(i).isRemark() && lines.get(i).cells().size() == width && lines.get(i).filledWidth() * 2 > width) {
                return i;
            }
        }
        return -1;
    }

    private static int usualWidth(List<DelimitedLine> lines) {
        int[] counts = new int[1 + lines.stream().mapToInt(line -> line.cells().size()).max().orElse(0)];
        for (DelimitedLine line : lines) {
            if (!line.isRemark() && !line.isBlank()) {
                counts[line.cells().size()]++;
            }
        }
        int usual = 0;
        for (int width = 1; width < counts.length; width++) {
            if (counts[width] >= Math.max(1, counts[usual])) {
                usual = width;
            }
        }
        return usual;
    }

    private static Layout withHeading(char delimiter, List<DelimitedLine> lines, int width) {
        int first = firstOfWidth(lines, width);
        if (first < 0) {
            return new Layout(delimiter, 0, List.of(), List.of(), 1);
        }
        DelimitedLine line = lines.get(first);
        if (numbersIn(line) * 2 > line.filledWidth()) {
            return withoutHeading(delimiter, lines, first, width);
        }
        List<String> names = named(line.texts());
        int next = first + 1;
        while (next < lines.size() && (lines.get(next).isBlank() || lines.get(next).isRemark())) {
            next++;
        }
        if (next < lines.size() && UnitWords.isLineOfUnits(lines.get(next).texts())) {
            return new Layout(delimiter, line.line(), names, padded(lines.get(next).texts(), names.size()), lines.get(next).line() + 1);
        }
        return new Layout(delimiter, line.line(), names, padded(List.of(), names.size()), line.line() + 1);
    }

    /** Names may stand in the last remark before the numbers, where a program wrote them behind the remark sign. */
    private static Layout withoutHeading(char delimiter, List<DelimitedLine> lines, int first, int width) {
        int dataLine = lines.get(first).line();
        for (int i = first - 1; i >= 0; i--) {
            DelimitedLine remark = lines.get(i);
            if (remark.isRemark() && remark.cells().size() == width && numbersIn(remark) == 0) {
                return new Layout(delimiter, remark.line(), named(remark.texts()), padded(List.of(), width), dataLine);
            }
        }
        return new Layout(delimiter, 0, named(padded(List.of(), width)), padded(List.of(), width), dataLine);
    }

    private static List<String> named(List<String> cells) {
        List<String> names = new ArrayList<>();
        for (int i = 0; i < cells.size(); i++) {
            names.add(cells.get(i).isBlank() ? "column " + (i + 1) : cells.get(i).strip());
        }
        boolean trailing = cells.size() > 1 && cells.get(cells.size() - 1).isBlank();
        return trailing && cells.stream().anyMatch(cell -> !cell.isBlank()) ? names.subList(0, names.size() - 1) : names;
    }

    private static List<String> padded(List<String> cells, int width) {
        List<String> padded = new ArrayList<>();
        for (int i = 0; i < width; i++) {
            padded.add(i < cells.size() ? cells.get(i).strip() : "");
        }
        return padded;
    }

    private static int numbersIn(DelimitedLine line) {
        int numbers = 0;
        for (DelimitedLine.Cell cell : line.cells()) {
            numbers += beginsLikeANumber(cell.text()) ? 1 : 0;
        }
        return numbers;
    }

    /** A number, a date or a time of day begins with a digit, perhaps behind a sign or a mark. */
    private static boolean beginsLikeANumber(String text) {
        String bare = text.strip().toLowerCase(Locale.ROOT);
        for (int i = 0; i < bare.length() && i < 3; i++) {
            char c = bare.charAt(i);
            if (c >= '0' && c <= '9') {
                return true;
            }
            if (c != '-' && c != '+' && c != '.' && c != ',' && c != '\u2212') {
                return false;
            }
        }
        return false;
    }
}
