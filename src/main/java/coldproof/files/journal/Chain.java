package coldproof.files.journal;

import coldproof.study.EventKind;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Second pass: orders the lines by sequence, follows the sums from line to line and says where the chain does not hold. */
final class Chain {
    private final List<Found> lines = new ArrayList<>();
    private final List<Found> otherBranch = new ArrayList<>();
    private final List<Damage> damages = new ArrayList<>();
    private final List<Span> unreadable;

    Chain(List<Found> found, List<Span> unreadable) {
        this.unreadable = unreadable;
        List<Found> ordered = inOrder(found);
        Set<Long> branchSums = new HashSet<>();
        Found last = null;
        for (int i = 0; i < ordered.size();) {
            int end = i + 1;
            while (end < ordered.size() && ordered.get(end).sequence() == ordered.get(i).sequence()) {
                end++;
            }
            boolean alone = end == i + 1 && branchSums.isEmpty();
            Found chosen = alone ? ordered.get(i) : choose(last, ordered.subList(i, end), branchSums);
            if (chosen != null) {
                link(last, chosen);
                lines.add(chosen);
                last = chosen;
            }
            i = end;
        }
    }

    private List<Found> inOrder(List<Found> found) {
        boolean sorted = true;
        long highest = 0;
        for (Found each : found) {
            sorted &= each.sequence() > highest;
            highest = Math.max(highest, each.sequence());
        }
        if (sorted) {
            return found;
        }
        List<Found> ordered = new ArrayList<>(found);
        ordered.sort(Comparator.comparingLong(Found::sequence)); // stable: equal sequences stay in the order of the file
        return ordered;
    }

    /** Of the lines with one sequence number, the one that continues the chain; the others are repeats or another branch. */
    private Found choose(Found last, List<Found> same, Set<Long> branchSums) {
        Found chosen = null;
        for (Found each : same) {
            boolean continues = last != null && each.line().previous() == last.line().sum();
            boolean mayStand = !branchSums.contains(each.line().previous());
            if (chosen == null && (continues || mayStand)) {
                chosen = each;
            }
        }
        for (Found each : same) {
            if (each == chosen) {
                continue;
            }
            if (chosen != null && each.line().sum() == chosen.line().sum()) {
                damage(each, Damage.Kind.LINE_REPEATED, "it repeats line " + chosen.number() + " and counts once", 0);
                continue;
            }
            branchSums.add(each.line().sum());
            otherBranch.add(each);
            damage(each, Damage.Kind.OTHER_BRANCH, "it is entry " + each.sequence() + " of another branch"
                    + (chosen == null ? "" : ", beside line " + chosen.number()) + "; it is kept apart", 0);
        }
        return chosen;
    }

    private void link(Found before, Found after) {
        long expected = before == null ? 1 : before.sequence() + 1;
        long missing = after.sequence() - expected;
        if (before != null && after.number() < before.number()) {
            damage(after, Damage.Kind.OUT_OF_PLACE, "it holds entry " + after.sequence() + ", which belongs after line "
                    + before.number(), 0);
        }
        long unreadableBetween = unreadableBetween(before, after);
        if (missing > unreadableBetween) {
            long lost = missing - unreadableBetween;
            damage(after, Damage.Kind.ENTRIES_MISSING, (lost == 1 ? "one entry is" : lost + " entries are")
                    + " missing before it: it is entry " + after.sequence() + ", expected " + expected, lost);
        } else if (missing == 0 && after.line().previous() != (before == null ? Sum.NONE : before.line().sum())) {
            damage(after, Damage.Kind.CHAIN_BROKEN, before == null ? "it does not begin a journal, though it is entry 1"
                    : "it does not continue line " + before.number() + ": one of the two was replaced", 0);
        }
    }

    private long unreadableBetween(Found before, Found after) {
        if (unreadable.isEmpty()) {
            return 0;
        }
        int from = before == null ? 0 : before.from();
        return unreadable.stream().filter(span -> span.from() > from - 1 && span.from() < after.from()).count();
    }

    /** Compares with the entry that was acknowledged last. */
    Optional<Damage> checkEnd(Head head, byte[] bytes) {
        long last = lines.isEmpty() ? 0 : lines.get(lines.size() - 1).sequence();
        if (head.sequence() == last && last > 0 && lines.get(lines.size() - 1).line().sum() == head.sum()) {
            return Optional.empty(); // as nearly always
        }
        if (head.sequence() > last) {
            long missing = head.sequence() - last - unreadableAfter(last);
            return missing <= 0 ? Optional.empty() : Optional.of(new Damage(1 + lineBreaks(bytes), bytes.length, Damage.Kind.END_MISSING,
                    "the journal ends with entry " + last + ", but entry " + head.sequence() + " had been acknowledged", missing));
        }
        boolean merged = lines.stream().anyMatch(found -> found.line().entry().event().kind() == EventKind.JOURNALS_MERGED);
        for (Found found : lines) {
            if (found.sequence() == head.sequence() && found.line().sum() != head.sum() && !merged) {
                return Optional.of(new Damage(found.number(), found.from(), Damage.Kind.REPLACED, "it is not the entry "
                        + head.sequence() + " that had been acknowledged here: another copy was put in its place", 0));
            }
        }
        return Optional.empty();
    }

    private long unreadableAfter(long last) {
        int from = last == 0 ? -1 : lines.get(lines.size() - 1).from();
        return unreadable.stream().filter(span -> span.from() > from).count();
    }

    private static int lineBreaks(byte[] bytes) {
        int count = 0;
        for (byte each : bytes) {
            count += each == '\n' ? 1 : 0;
        }
        return count;
    }

    private void damage(Found at, Damage.Kind kind, String text, long lost) {
        damages.add(new Damage(at.number(), at.from(), kind, text, lost));
    }

    List<Found> lines() {
        return lines;
    }

    List<Found> otherBranch() {
        return otherBranch;
    }

    List<Damage> damages() {
        return damages;
    }
}
