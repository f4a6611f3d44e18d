package coldproof.study;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;

/** Finds where two copies of a journal say different things of one matter. */
final class MergeConflicts {
    private final Merging.Copy first;
    private final Merging.Copy second;
    private final List<MergeConflict> found = new ArrayList<>();
    private final List<String> remarks = new ArrayList<>();

    MergeConflicts(Merging.Copy first, Merging.Copy second) {
        this.first = first;
        this.second = second;
        changedEntries();
        plans();
        claims();
        touches();
        sessions();
    }

    List<MergeConflict> found() {
        return found;
    }

    List<String> remarks() {
        return remarks;
    }

    /** Entries of both that do not say the same. */
    private void changedEntries() {
        for (int i = 0; i < first.entries.size(); i++) {
            Integer j = second.indexByKey.get(first.keys.get(i));
            if (j != null) {
                Entry one = first.entries.get(i);
                Entry other = second.entries.get(j);
                if (!Merging.pointed(one.event(), first.numbers).equals(Merging.pointed(other.event(), second.numbers))) {
                    conflict("an entry that both have was changed in one of them", one, other, false);
                }
            }
        }
    }

    private List<Entry> onlyIn(Merging.Copy copy, Merging.Copy other) {
        List<Entry> only = new ArrayList<>();
        for (int i = 0; i < copy.entries.size(); i++) {
            if (!other.indexByKey.containsKey(copy.keys.get(i))) {
                only.add(copy.entries.get(i));
            }
        }
        return only;
    }

    private void plans() {
        Optional<Entry> one = lastPlan(onlyIn(first, second));
        Optional<Entry> other = lastPlan(onlyIn(second, first));
        if (one.isPresent() && other.isPresent() && !digest(one.get()).equals(digest(other.get()))) {
            conflict("each copy fixed another plan", one.get(), other.get(), false);
        } else if (one.isPresent() != other.isPresent()) {
            remarks.add("the plan was fixed or changed in the " + (one.isPresent() ? "first" : "second") + " copy only");
        }
    }

    private static Optional<Entry> lastPlan(List<Entry> entries) {
        return entries.stream().filter(entry -> !digest(entry).isEmpty()).reduce((before, after) -> after);
    }

    private static String digest(Entry entry) {
        if (entry.event() instanceof PlanFrozen frozen) {
            return frozen.digest();
        }
        return entry.event() instanceof PlanAmended amended ? amended.digest() : "";
    }

    /** Positions of the run sheet that each copy settled by itself. */
    private void claims() {
        Map<Integer, Entry> ones = claims(first, second);
        claims(second, first).forEach((position, other) -> {
            if (ones.containsKey(position)) {
                conflict("trial " + position + " was recorded or skipped in both", ones.get(position), other, true);
            }
        });
    }

    private Map<Integer, Entry> claims(Merging.Copy copy, Merging.Copy other) {
        Undoing undoing = new Undoing(copy.entries);
        Map<Integer, Entry> claims = new LinkedHashMap<>();
        for (Entry entry : onlyIn(copy, other)) {
            if (!undoing.isTakenBack(entry.sequence())) {
                position(entry.event()).ifPresent(position -> claims.putIfAbsent(position, entry));
            }
        }
        return claims;
    }

    private static Optional<Integer> position(Event event) {
        if (event instanceof TrialRecorded trial) {
            return Optional.of(trial.position());
        }
        return event instanceof TrialSkipped skipped ? Optional.of(skipped.position()) : Optional.empty();
    }

    /** Entries of both that each copy took back or corrected by itself, and not alike. */
    private void touches() {
        Map<Long, Entry> ones = touches(first, second);
        touches(second, first).forEach((target, other) -> {
            Entry one = ones.get(target);
            if (one != null && !isAlike(one.event(), other.event())) {
                conflict("entry " + target + " was corrected or taken back in both", one, other, true);
            }
        });
    }

    /** By the new number of what is touched, the last touch that holds. */
    private Map<Long, Entry> touches(Merging.Copy copy, Merging.Copy other) {
        Undoing undoing = new Undoing(copy.entries);
        Map<Long, Entry> touches = new LinkedHashMap<>();
        for (Entry entry : onlyIn(copy, other)) {
            OptionalLong target = entry.event() instanceof TrialUndone undone ? OptionalLong.of(undone.sequence())
                    : entry.event() instanceof TrialCorrected corrected ? OptionalLong.of(corrected.sequence()) : OptionalLong.empty();
            if (target.isPresent() && !undoing.isTakenBack(entry.sequence()) && copy.numbers.containsKey(target.getAsLong())) {
                touches.put(copy.numbers.get(target.getAsLong()), entry);
            }
        }
        return touches;
    }

    private static boolean isAlike(Event one, Event other) {
        if (one instanceof TrialCorrected first && other instanceof TrialCorrected second) {
            return first.score() == second.score();
        }
        return one.kind() == other.kind();
    }

    private void sessions() {
        Map<Integer, Entry> others = openings(second, first);
        openings(first, second).forEach((session, one) -> {
            if (others.containsKey(session)) {
                remarks.add("session " + session + " was opened in both copies: entry " + one.sequence() + " of the first, entry "
                        + others.get(session).sequence() + " of the second");
            }
        });
    }

    private Map<Integer, Entry> openings(Merging.Copy copy, Merging.Copy other) {
        Map<Integer, Entry> openings = new LinkedHashMap<>();
        for (Entry entry : onlyIn(copy, other)) {
            if (entry.event() instanceof SessionOpened opened) {
                openings.putIfAbsent(opened.session(), entry);
            }
        }
        return openings;
    }

    private void conflict(String what, Entry one, Entry other, boolean canBeSettled) {
        found.add(new MergeConflict(what, words(one), words(other), canBeSettled ? OptionalLong.of(first.newNumber(one)) : OptionalLong.empty(),
                canBeSettled ? OptionalLong.of(second.newNumber(other)) : OptionalLong.empty()));
    }

    private static String words(Entry entry) {
        String says = entry.event().kind().word();
        if (entry.event() instanceof TrialRecorded trial) {
            says = "score " + trial.score() + " " + trial.unit();
        } else if (entry.event() instanceof TrialSkipped skipped) {
            says = "skipped: " + skipped.reason();
        } else if (entry.event() instanceof TrialCorrected corrected) {
            says = "corrected to " + corrected.score();
        } else if (entry.event() instanceof TrialUndone) {
            says = "taken back";
        } else if (!digest(entry).isEmpty()) {
            says = "plan " + digest(entry).substring(0, Math.min(12, digest(entry).length()));
        }
        return "entry " + entry.sequence() + " of " + entry.at() + ", " + says.strip();
    }
}
