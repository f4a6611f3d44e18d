package coldproof.files.journal;

import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.study.Entry;
import coldproof.study.JournalMended;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Writes a sound journal from a damaged one. Nothing is deleted: the damaged file stays beside it, every entry that can be read stays under
 * its number, and an entry that cannot be read leaves its number to one that says so.
 */
public final class JournalRepair {
    /** More missing entries than any study has: the numbers themselves are not to be believed. */
    private static final long MOST_MISSING = 100_000;
    private static final int MOST_NAMED = 20;

    private JournalRepair() {}

    /**
     * What was done.
     *
     * @param keptAs name of the file that keeps the damaged journal
     * @param damages what was wrong
     * @param entriesKept how many entries were read
     * @param entriesLost how many could not be
     */
    public record Repaired(String keptAs, List<Damage> damages, int entriesKept, long entriesLost) {}

    /**
     * Repairs a journal nobody else writes to.
     *
     * @return what was done; empty when it is sound, and nothing was changed
     * @throws Refused if no entry can be read, or the files cannot be written; the journal is unchanged then
     */
    public static Optional<Repaired> repair(Disk disk, Path path, JournalClock clock) {
        Reading reading = JournalReader.read(disk, path);
        if (reading.isSound()) {
            return Optional.empty();
        }
        refuseTheHopeless(path, reading);
        try {
            Path keepAs = Rewriting.freeName(disk, path, "damaged");
            String kept = keepAs.getFileName().toString();
            Rewriting anew = new Rewriting(clock);
            long lost = rewrite(reading, anew, kept);
            anew.add(new JournalMended(summary(reading, lost), Optional.of(kept)));
            anew.replace(disk, path, reading.bytes(), keepAs);
            return Optional.of(new Repaired(kept, reading.damages(), reading.entries().size(), lost));
        } catch (IOException e) {
            throw DiskTrouble.refused(disk, "could not be repaired", path, "no entry was changed", e);
        }
    }

    private static void refuseTheHopeless(Path path, Reading reading) {
        if (reading.entries().isEmpty()) {
            throw new Refused(Problem.of("no entry can be read", Place.named(path.toString()), "a journal with at least one whole line",
                    "Bring back a copy. Nothing was changed."));
        }
        long missing = last(reading) - reading.entries().size();
        if (missing > MOST_MISSING) {
            throw new Refused(Problem.of(missing + " entries seem to be missing, which cannot be", Place.named(path.toString()),
                    "entry numbers that a study can reach", "Bring back a copy. Nothing was changed."));
        }
    }

    private static long last(Reading reading) {
        long read = reading.entries().get(reading.entries().size() - 1).sequence();
        return Math.max(reading.nextSequence() - 1, reading.head().map(head -> Math.max(read, head.sequence())).orElse(read));
    }

    /** @return how many entries could not be read */
    private static long rewrite(Reading reading, Rewriting anew, String kept) {
        long lost = 0;
        Entry before = reading.entries().get(0);
        for (Found found : reading.found()) {
            lost += fill(anew, found.sequence(), before, kept);
            anew.keep(found);
            before = found.line().entry();
        }
        return lost + fill(anew, last(reading) + 1, before, kept);
    }

    /** The clocks are those of the entry before, so that none of them seems to run back. */
    private static long fill(Rewriting anew, long until, Entry before, String kept) {
        long from = anew.lastSequence() + 1;
        for (long n = from; n < until; n++) {
            JournalMended lost = new JournalMended("entry " + n + JournalMended.UNREAD, Optional.of(kept));
            anew.add(new Entry(n, before.at(), before.monotonicSeconds(), before.process(), lost));
        }
        return until - from;
    }

    private static String summary(Reading reading, long lost) {
        String places = reading.damages().stream().limit(MOST_NAMED).map(damage -> "line " + damage.line() + ": " + damage.text())
                .collect(Collectors.joining("; "));
        int more = reading.damages().size() - MOST_NAMED;
        return "the journal was repaired, " + lost + (lost == 1 ? " entry" : " entries") + " could not be read; " + places
                + (more > 0 ? "; and " + more + " more" : "");
    }
}
