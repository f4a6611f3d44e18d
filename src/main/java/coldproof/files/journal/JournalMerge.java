package coldproof.files.journal;

import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.study.Entry;
import coldproof.study.JournalBegun;
import coldproof.study.JournalsMerged;
import coldproof.study.MergeChoice;
import coldproof.study.MergeConflict;
import coldproof.study.MergedEntries;
import coldproof.study.Merging;
import coldproof.study.TrialUndone;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Puts two copies of a journal together, in the place of the first, which stays beside it under another name. */
public final class JournalMerge {
    private JournalMerge() {}

    /**
     * What merging the two would give.
     *
     * @param choice settles the conflicts that can be settled
     * @throws Refused if one of the two is damaged, they are not copies of one study, or conflicts are left
     */
    public static MergedEntries plan(Path firstPath, Reading first, Path secondPath, Reading second,
            MergeChoice choice) {
        refuseDamage(firstPath, first, false);
        boolean continues = second.continues(first);
        refuseDamage(secondPath, second, continues);
        MergedEntries merged = Merging.merge(first.entries(), second.entries());
        if (merged.common() == 0 && !continues && !mark(first).equals(mark(second))) {
            throw new Refused(Problem.of("the two journals are not copies of one study", Place.named(secondPath.toString()),
                    "a journal that shares its first entries with " + firstPath + ", or goes on from one of them",
                    "Check the names. Nothing was changed."));
        }
        refuseConflicts(firstPath, merged, choice);
        return merged;
    }

    /** An end cut short was never acknowledged; a journal that went on elsewhere lacks what came before. Neither is damage here. */
    private static void refuseDamage(Path path, Reading reading, boolean continues) {
        boolean harmless = reading.damages().stream()
                .allMatch(damage -> damage.kind() == Damage.Kind.TORN_TAIL || damage.kind() == Damage.Kind.LINE_BREAK_MISSING
                        || continues && damage.kind() == Damage.Kind.ENTRIES_MISSING && damage.line() == 1);
        if (!harmless || reading.entries().isEmpty()) {
            throw new Refused(Problem.of("the journal is damaged at line "
                    + reading.damagedLines().stream().findFirst().map(String::valueOf).orElse("1"), Place.named(path.toString()),
                    "two sound journals; nothing was changed", "Run: coldproof journal check, then journal repair, on that one first."));
        }
    }

    private static Optional<String> mark(Reading reading) {
        return reading.entries().get(0).event() instanceof JournalBegun begun ? Optional.of(begun.study()) : Optional.empty();
    }

    /**
     * Writes the merged journal in the place of the first, of which nobody else writes.
     *
     * @param first what is in its place now
     * @param merged what {@link #plan} gave for this choice
     * @return name of the file that keeps the first
     * @throws Refused if the files cannot be written; the first is unchanged then
     */
    public static String write(Disk disk, Path path, Reading first, MergedEntries merged, MergeChoice choice, JournalClock clock) {
        try {
            Path keepAs = Rewriting.freeName(disk, path, "before-merge");
            rewriting(first, merged, choice, clock).replace(disk, path, first.bytes(), keepAs);
            return keepAs.getFileName().toString();
        } catch (IOException e) {
            throw DiskTrouble.refused(disk, "could not be merged", path, "no entry was changed", e);
        }
    }

    private static void refuseConflicts(Path path, MergedEntries merged, MergeChoice choice) {
        List<Problem> problems = new ArrayList<>();
        for (MergeConflict conflict : merged.conflicts()) {
            if (choice == MergeChoice.NEITHER || !conflict.canBeSettled()) {
                problems.add(Problem.of(conflict.what() + "; first copy: " + conflict.first() + "; second copy: " + conflict.second(),
                        Place.named(path.toString()), "", conflict.canBeSettled()
                                ? "Nothing was changed. Say whose word counts: --keep first or --keep second; the other stays on record, taken back."
                                : "Nothing was changed. This cannot be settled by a choice: decide which copy is right and go on with that one."));
            }
        }
        if (!problems.isEmpty()) {
            throw new Refused(problems);
        }
    }

    private static Rewriting rewriting(Reading first, MergedEntries merged, MergeChoice choice, JournalClock clock) {
        Map<Long, Found> texts = new HashMap<>();
        first.found().forEach(found -> texts.put(found.sequence(), found));
        Rewriting anew = new Rewriting(clock);
        for (Entry entry : merged.entries()) {
            Found found = texts.get(entry.sequence());
            if (found != null && found.line().entry().equals(entry)) {
                anew.keep(found);
            } else {
                anew.add(entry);
            }
        }
        List<String> resolved = new ArrayList<>(merged.remarks());
        for (MergeConflict conflict : merged.conflicts()) {
            resolved.add(conflict.what() + ": the " + choice.word() + " copy's word counts (first: " + conflict.first() + "; second: "
                    + conflict.second() + ")");
        }
        anew.add(new JournalsMerged(merged.common(), merged.fromFirst(), merged.fromSecond(), resolved));
        for (MergeConflict conflict : merged.conflicts()) {
            long loser = choice == MergeChoice.FIRST ? conflict.secondMerged().getAsLong() : conflict.firstMerged().getAsLong();
            anew.add(new TrialUndone(loser, "settled when two copies were merged: the " + choice.word() + " copy's word counts"));
        }
        return anew;
    }
}
