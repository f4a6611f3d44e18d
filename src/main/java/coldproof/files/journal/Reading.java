package coldproof.files.journal;

import coldproof.quantity.ConstantWord;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.study.Entry;
import coldproof.study.JournalCheck;
import coldproof.study.JournalFlaw;
import coldproof.study.StudyState;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What was read from a journal file: every entry that can be read, and everything that is wrong with the file, by line. */
public final class Reading {
    /** The remedy of damage that touches no entry and sets itself right. */
    public static final String NOTHING_TO_DO = "Nothing to do: the next entry sets it right and keeps the torn bytes in a file beside the journal.";

    private final String name;
    private final List<Found> found;
    private final List<Line> lines;
    private final byte[] bytes;
    private final Optional<Head> head;
    private final List<Entry> entries;
    private final List<Entry> otherBranch;
    private final List<Damage> damages;
    private final Optional<Span> tornTail;
    private final boolean lastLineBreakMissing;
    private final int length;
    private final int unreadableAtEnd;

    Reading(String name, byte[] bytes, LineScan scan, Optional<Head> head) {
        this.name = name;
        Chain chain = new Chain(scan.found(), scan.unreadable());
        this.bytes = bytes;
        this.head = head;
        found = List.copyOf(chain.lines());
        lines = new ArrayList<>(found.size());
        for (Found each : found) {
            lines.add(each.line());
        }
        entries = entries(found);
        otherBranch = entries(chain.otherBranch());
        List<Damage> all = new ArrayList<>(scan.damages());
        all.addAll(chain.damages());
        Optional<Damage> end = head.isPresent() ? chain.checkEnd(head.get(), bytes) : Optional.empty();
        if (end.isPresent()) {
            all.add(end.get());
        }
        if (all.size() > 1) {
            all.sort(Comparator.comparingInt(Damage::line).thenComparingLong(Damage::byteOffset));
        }
        damages = List.copyOf(all);
        tornTail = scan.tornTail();
        lastLineBreakMissing = scan.lastLineBreakMissing();
        length = bytes.length;
        int lastFrom = scan.found().isEmpty() ? -1 : scan.found().get(scan.found().size() - 1).from();
        int unreadable = 0;
        for (Span span : scan.unreadable()) {
            unreadable += span.from() > lastFrom ? 1 : 0;
        }
        unreadableAtEnd = unreadable - (tornTail.isPresent() ? 1 : 0);
    }

    /** By hand: this is on the way to every prompt, where the first stream of a program takes two milliseconds. */
    private static List<Entry> entries(List<Found> found) {
        List<Entry> entries = new ArrayList<>(found.size());
        for (Found each : found) {
            entries.add(each.line().entry());
        }
        return Collections.unmodifiableList(entries);
    }

    /** The entries that could be read, in the order of their sequence. */
    public List<Entry> entries() {
        return entries;
    }

    /** Intact entries that continue another branch, as when two copies were joined by hand; they do not count among {@link #entries}. */
    public List<Entry> otherBranch() {
        return otherBranch;
    }

    /** Whether this journal was begun elsewhere, in the place of the other, and its first entry follows one of the other's. */
    public boolean continues(Reading other) {
        if (lines.isEmpty()) {
            return false;
        }
        Line begin = lines.get(0);
        return other.lines.stream().anyMatch(line -> line.sum() == begin.previous() && line.entry().sequence() == begin.entry().sequence() - 1);
    }

    /** Everything that is wrong, in the order of the file. */
    public List<Damage> damages() {
        return damages;
    }

    /** Whether nothing at all is wrong. */
    public boolean isSound() {
        return damages.isEmpty();
    }

    /** Numbers of the lines at which something is wrong, ascending, each once. */
    public List<Integer> damagedLines() {
        return damages.stream().map(Damage::line).distinct().toList();
    }

    /** What the file holds and what is wrong with it; the trials that count come from the entries. */
    public JournalCheck check(String file) {
        StudyState state = StudyState.fold(entries);
        List<JournalFlaw> flaws = damages.stream().map(damage -> new JournalFlaw(damage.line(), damage.byteOffset(),
                ConstantWord.of(damage.kind()), damage.text(), damage.entriesLost())).toList();
        return new JournalCheck(file, entries.size(), state.trials().size(), state.lastSequence(), lines.isEmpty() ? "" : Sum.text(lastSum()),
                flaws, state.oddities());
    }

    /** The damages, worded for the person. */
    public List<Problem> problems() {
        List<Problem> problems = new ArrayList<>();
        for (Damage damage : damages) {
            problems.add(problem(damage));
        }
        return problems;
    }

    private Problem problem(Damage damage) {
        String lost = damage.entriesLost() == 0 ? "no entry is lost by it"
                : damage.entriesLost() == 1 ? "one entry cannot be read, all others are" : damage.entriesLost() + " entries cannot be read";
        return Problem.of("line " + damage.line() + ": " + damage.text() + " (" + lost + ")", Place.of(name, damage.line(), 0), "",
                damage.kind() == Damage.Kind.TORN_TAIL || damage.kind() == Damage.Kind.LINE_BREAK_MISSING
                        ? NOTHING_TO_DO
                        : "Compare with another copy, or run: coldproof journal repair (the damaged file is kept)");
    }

    /** Bytes of a last line that was cut short: from, to. */
    Optional<Span> tornTail() {
        return tornTail;
    }

    /** The bytes of the file. */
    byte[] bytes() {
        return bytes;
    }

    /** The entry acknowledged last, where it is known. */
    Optional<Head> head() {
        return head;
    }

    /** The lines of {@link #entries}, with their text. */
    List<Found> found() {
        return found;
    }

    boolean lastLineBreakMissing() {
        return lastLineBreakMissing;
    }

    List<Line> lines() {
        return lines;
    }

    /** Where the next line goes: the end of the file, or the start of a torn tail. */
    int wholeLength() {
        return tornTail.map(Span::from).orElse(length);
    }

    /** Sequence of the next entry; numbers that unreadable lines at the end may have had are not used again. */
    long nextSequence() {
        return (lines.isEmpty() ? 0 : lines.get(lines.size() - 1).entry().sequence()) + unreadableAtEnd + 1;
    }

    /** The sum that the next line names as the one before it. */
    long lastSum() {
        return lines.isEmpty() ? Sum.NONE : lines.get(lines.size() - 1).sum();
    }
}
