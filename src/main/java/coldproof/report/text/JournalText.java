package coldproof.report.text;

import coldproof.quantity.Counted;
import coldproof.study.JournalChange;
import coldproof.study.JournalCheck;
import coldproof.study.JournalFlaw;
import coldproof.study.Oddity;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** What {@code journal} says to people. */
public final class JournalText {
    private static final int MOST_LINES = 12;

    private JournalText() {}

    /** What a look at a journal found. */
    public static String check(JournalCheck check, int columns) {
        StringBuilder out = new StringBuilder();
        Wrap.indented(Harmless.line(check.file()) + ": " + summary(check), "", columns, out);
        for (JournalFlaw flaw : check.flaws()) {
            hanging("line " + flaw.line(), flaw.text() + lost(flaw.entriesLost()), columns, out);
        }
        if (!check.oddities().isEmpty()) {
            out.append("Worth knowing, though nothing is lost by it:\n");
            for (Oddity oddity : check.oddities()) {
                hanging("entry " + oddity.sequence(), oddity.text(), columns, out);
            }
        }
        if (!check.isSound()) {
            Wrap.indented("Next: compare with another copy, or run: coldproof journal repair (the damaged file is kept beside the new one)", "", columns, out);
        }
        return out.toString();
    }

    /** What repairing or merging did. */
    public static String change(JournalChange change, int columns) {
        StringBuilder out = new StringBuilder();
        change.said().forEach(said -> Wrap.indented(Harmless.line(said.substring(0, 1).toUpperCase(Locale.ROOT) + said.substring(1)) + ".", "", columns, out));
        change.keptAs().ifPresent(file -> Wrap.indented("What was there before is kept as " + Harmless.line(file) + ".", "", columns, out));
        return out.append(check(change.after(), columns)).toString();
    }

    private static void hanging(String head, String text, int columns, StringBuilder out) {
        Wrap.hanging("  " + head + ": ", Harmless.line(text), columns, out);
    }

    private static String summary(JournalCheck check) {
        String holds = Counted.of(check.entries(), "entry", "entries") + ", " + Counted.of(check.trials(), "trial that counts", "trials that count");
        if (check.isSound()) {
            return "sound. " + holds + (check.lastSum().isEmpty() ? "" : ". The last is entry " + check.lastSequence() + ", checksum " + check.lastSum()) + ".";
        }
        return "not sound: something is wrong at " + lines(check.damagedLines()) + ". Still readable: " + holds + "."
                + (check.entriesLost() == 0 ? " No entry is lost." : " Not readable: " + Counted.of(check.entriesLost(), "entry", "entries") + ".");
    }

    private static String lines(List<Integer> lines) {
        String shown = lines.stream().limit(MOST_LINES).map(String::valueOf).collect(Collectors.joining(", "));
        return (lines.size() == 1 ? "line " : "lines ") + shown + (lines.size() > MOST_LINES ? " and " + (lines.size() - MOST_LINES) + " more" : "");
    }

    private static String lost(long entries) {
        return entries == 0 ? "" : " (" + Counted.of(entries, "entry", "entries") + " lost)";
    }
}
