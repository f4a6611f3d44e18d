package coldproof.study;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Which entries are taken back. Read from the last entry to the first: an undo that is not itself taken back takes back its target, so
 * undoing an undo makes the target count again.
 */
final class Undoing {
    private final List<Entry> entries;
    private final Set<Long> takenBack = new HashSet<>();
    private final List<Oddity> oddities = new ArrayList<>();
    private final Map<Long, Entry> bySequence = new HashMap<>();
    private int sorted; // entries that bySequence holds

    /** Keeps the list, to which entries that take nothing back may be added later. */
    Undoing(List<Entry> entries) {
        this.entries = entries;
        for (int i = entries.size() - 1; i >= 0; i--) {
            Entry entry = entries.get(i);
            if (entry.event() instanceof TrialUndone undo && !takenBack.contains(entry.sequence())) {
                takeBack(entry.sequence(), undo.sequence());
            }
        }
        Collections.reverse(oddities);
    }

    private void takeBack(long undo, long target) {
        Entry entry = entry(target);
        if (entry == null || target >= undo || !canBeUndone(entry.event().kind())) {
            oddities.add(new Oddity(Oddity.Kind.WRONG_TARGET, undo,
                    "entry " + undo + " takes back entry " + target + ", which is not an earlier trial, skip, correction or undo"));
        } else if (!takenBack.add(target)) {
            oddities.add(new Oddity(Oddity.Kind.WRONG_TARGET, undo,
                    "entry " + undo + " takes back entry " + target + ", as a later one does"));
        }
    }

    private static boolean canBeUndone(EventKind kind) {
        return kind == EventKind.TRIAL_RECORDED || kind == EventKind.TRIAL_SKIPPED || kind == EventKind.TRIAL_CORRECTED
                || kind == EventKind.TRIAL_UNDONE;
    }

    boolean isTakenBack(long sequence) {
        return takenBack.contains(sequence);
    }

    /** The entry with this sequence, null when there is none. Few journals ask for any, so they are sorted only then. */
    Entry entry(long sequence) {
        for (; sorted < entries.size(); sorted++) {
            bySequence.putIfAbsent(entries.get(sorted).sequence(), entries.get(sorted));
        }
        return bySequence.get(sequence);
    }

    List<Oddity> oddities() {
        return oddities;
    }
}
