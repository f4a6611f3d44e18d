package coldproof.study;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;

/**
 * Puts two copies of a journal together. An entry is known again by who wrote it and when, not by its number, so that copies merged once can
 * be merged again. Each copy keeps its own order; between the two, what both have comes where it stands, and the rest by the wall clock.
 */
public final class Merging {
    private final Copy first;
    private final Copy second;
    private final List<Entry> merged = new ArrayList<>();
    private long common;

    private Merging(List<Entry> first, List<Entry> second) {
        this.first = new Copy(first);
        this.second = new Copy(second);
    }

    /** Merges two copies; entries of each in the order of their sequence. */
    public static MergedEntries merge(List<Entry> first, List<Entry> second) {
        Merging merging = new Merging(first, second);
        merging.walk();
        merging.renumber();
        MergeConflicts conflicts = new MergeConflicts(merging.first, merging.second);
        return new MergedEntries(merging.merged, merging.common, first.size() - merging.common, second.size() - merging.common,
                conflicts.found(), conflicts.remarks());
    }

    private void walk() {
        int i = 0;
        int j = 0;
        while (i < first.entries.size() || j < second.entries.size()) {
            if (j < second.entries.size() && second.isPlaced(j)) {
                j++;
            } else if (i == first.entries.size()) {
                second.place(j++, merged);
            } else if (j == second.entries.size() || comesFirst(i, j)) {
                String key = first.keys.get(i);
                first.place(i++, merged);
                if (second.indexByKey.containsKey(key)) {
                    second.placeAt(second.indexByKey.get(key), merged.size());
                    common++;
                }
            } else {
                second.place(j++, merged);
            }
        }
    }

    /** Whether the next of the first copy comes before the next of the second. */
    private boolean comesFirst(int i, int j) {
        boolean secondKnowsIt = second.indexByKey.containsKey(first.keys.get(i));
        boolean firstKnowsIt = first.indexByKey.containsKey(second.keys.get(j));
        if (firstKnowsIt || secondKnowsIt) {
            return firstKnowsIt;
        }
        return !second.entries.get(j).at().toInstant().isBefore(first.entries.get(i).at().toInstant());
    }

    private void renumber() {
        for (int n = 0; n < merged.size(); n++) {
            Entry entry = merged.get(n);
            Map<Long, Long> numbers = first.owns(entry) ? first.numbers : second.numbers;
            merged.set(n, new Entry(n + 1L, entry.at(), entry.monotonicSeconds(), entry.process(), pointed(entry.event(), numbers)));
        }
    }

    /** The event with what it points at under its new number; a number that is not there stays. */
    static Event pointed(Event event, Map<Long, Long> numbers) {
        if (event instanceof TrialUndone undone) {
            return new TrialUndone(numbers.getOrDefault(undone.sequence(), undone.sequence()), undone.reason());
        }
        if (event instanceof TrialCorrected corrected) {
            return new TrialCorrected(numbers.getOrDefault(corrected.sequence(), corrected.sequence()), corrected.score(), corrected.reason());
        }
        if (event instanceof NoteAdded note && note.about().isPresent()) {
            long about = note.about().getAsLong();
            return new NoteAdded(note.text(), OptionalLong.of(numbers.getOrDefault(about, about)));
        }
        return event;
    }

    /** One of the two, with the new number of each of its entries. */
    static final class Copy {
        final List<Entry> entries;
        final List<String> keys = new ArrayList<>();
        final Map<String, Integer> indexByKey = new HashMap<>();
        final Map<Long, Long> numbers = new HashMap<>();
        private final Set<Entry> own = Collections.newSetFromMap(new IdentityHashMap<>());

        Copy(List<Entry> entries) {
            this.entries = entries;
            for (Entry entry : entries) {
                String same = entry.process() + "|" + entry.at().toInstant() + "|" + entry.monotonicSeconds() + "|" + entry.event().kind() + "|";
                int times = 1;
                while (indexByKey.containsKey(same + times)) {
                    times++;
                }
                indexByKey.put(same + times, keys.size());
                keys.add(same + times);
            }
        }

        boolean isPlaced(int index) {
            return numbers.containsKey(entries.get(index).sequence());
        }

        void place(int index, List<Entry> merged) {
            Entry entry = entries.get(index);
            merged.add(entry);
            own.add(entry);
            placeAt(index, merged.size());
        }

        void placeAt(int index, long number) {
            numbers.put(entries.get(index).sequence(), number);
        }

        boolean owns(Entry entry) {
            return own.contains(entry);
        }

        long newNumber(Entry entry) {
            return numbers.get(entry.sequence());
        }
    }
}
