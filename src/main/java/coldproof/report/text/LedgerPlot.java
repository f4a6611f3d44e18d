package coldproof.report.text;

import coldproof.reason.ledger.LedgerRow;
import coldproof.reason.ledger.LedgerTable;
import coldproof.reason.ledger.Standing;
import java.util.Arrays;

/** Speed ratios with their intervals, drawn with characters on a logarithmic scale: {@code |--o--|}, the reference at the colon. */
final class LedgerPlot {
    private static final int INDENT = 2;
    private static final int NAME = 24;
    private static final double SLACK = 0.02; // of a logarithm, so that equal devices still have a scale

    private LedgerPlot() {}

    static String of(LedgerTable table, int columns) {
        double low = -SLACK;
        double high = SLACK;
        for (LedgerRow row : table.rows()) {
            low = Math.min(low, low(row.standing()));
            high = Math.max(high, high(row.standing()));
        }
        int width = Math.max(20, columns - INDENT - NAME);
        StringBuilder out = new StringBuilder();
        for (LedgerRow row : table.rows()) {
            char[] line = new char[width];
            Arrays.fill(line, ' ');
            line[place(0, low, high, width)] = ':';
            int from = place(low(row.standing()), low, high, width);
            int to = place(high(row.standing()), low, high, width);
            for (int i = from; i <= to; i++) {
                line[i] = '-';
            }
            if (to > from) {
                line[from] = '|';
                line[to] = '|';
            }
            line[place(row.standing().logSpeedRatio(), low, high, width)] = 'o';
            String name = LedgerText.name(row.device());
            out.append(" ".repeat(INDENT)).append(name).append(" ".repeat(NAME - name.length())).append(new String(line).stripTrailing()).append('\n');
        }
        return out.append(axis(low, high, width)).toString();
    }

    private static double low(Standing standing) {
        return standing.interval().map(interval -> interval.low()).orElse(standing.logSpeedRatio());
    }

    private static double high(Standing standing) {
        return standing.interval().map(interval -> interval.high()).orElse(standing.logSpeedRatio());
    }

    private static int place(double log, double low, double high, int width) {
        return (int) Math.round((log - low) / (high - low) * (width - 1));
    }

    private static String axis(double low, double high, int width) {
        String left = Figures.fixed(Math.exp(low), 2) + "x";
        String right = Figures.fixed(Math.exp(high), 2) + "x";
        int middle = place(0, low, high, width);
        StringBuilder line = new StringBuilder(" ".repeat(INDENT + NAME)).append(left);
        if (middle > left.length() + 1 && middle + 2 + right.length() < width) {
            line.append(" ".repeat(middle - left.length())).append("1x");
        }
        line.append(" ".repeat(Math.max(1, INDENT + NAME + width - right.length() - line.length()))).append(right);
        return line.append('\n').toString();
    }
}
