package coldproof.report.text;

import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import java.util.List;

/** Problems as a person reads them: the place and what is wrong, the line with the spot marked, what was expected, what to do. */
public final class ProblemText {
    private static final int WIDEST_EXCERPT = 74;
    private static final int MOST = 20; // told in full; a column of the wrong kind has one in every row

    private ProblemText() {}

    /** The problems, not more than the first twenty, a blank line between two, each line ended; what is wrong stands in one line, so that a program can look for it. */
    public static String of(List<Problem> problems) {
        return of(problems, Wrap.USUAL_COLUMNS, Integer.MAX_VALUE);
    }

    /** The same for the width of a person's terminal. */
    public static String of(List<Problem> problems, int columns) {
        return of(problems, columns, columns);
    }

    private static String of(List<Problem> problems, int columns, int columnsOfFirst) {
        StringBuilder out = new StringBuilder();
        for (Problem problem : problems.subList(0, Math.min(MOST, problems.size()))) {
            if (!out.isEmpty()) {
                out.append('\n');
            }
            one(problem, columns, columnsOfFirst, out);
        }
        if (problems.size() > MOST) {
            out.append("\nAnd ").append(problems.size() - MOST).append(" more; --json tells them all.\n");
        }
        return out.toString();
    }

    private static void one(Problem problem, int columns, int columnsOfFirst, StringBuilder out) {
        Place where = problem.where();
        Wrap.indented(Harmless.line(where.text()) + ": " + Harmless.line(problem.what()), "", columnsOfFirst, out);
        excerpt(where, out);
        if (!problem.expected().isBlank()) {
            Wrap.indented("Expected " + Harmless.line(problem.expected()) + ".", "  ", columns, out);
        }
        if (!problem.nearest().isEmpty()) {
            Wrap.indented("Nearest: " + Harmless.line(String.join(", ", problem.nearest())) + ".", "  ", columns, out);
        }
        Wrap.indented(Harmless.line(problem.remedy()), "  ", columns, out);
    }

    private static void excerpt(Place where, StringBuilder out) {
        if (where.excerpt().isBlank()) {
            return;
        }
        int column = Math.max(1, where.column());
        int from = Math.max(0, Math.min(column - 1, where.excerpt().length()) - WIDEST_EXCERPT + 20);
        String line = where.excerpt().substring(from, Math.min(where.excerpt().length(), from + WIDEST_EXCERPT));
        out.append("    ").append(Harmless.line(line)).append('\n');
        if (where.column() > 0) {
            int marks = Math.max(1, Math.min(where.width(), WIDEST_EXCERPT - (column - 1 - from)));
            out.append("    ").append(" ".repeat(Math.max(0, column - 1 - from))).append("^".repeat(marks)).append('\n');
        }
    }
}
