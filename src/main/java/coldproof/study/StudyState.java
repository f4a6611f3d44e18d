package coldproof.study;

import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * The state of a study: what its entries amount to. Undone trials are gone, corrections are applied, and nothing odd is passed over.
 *
 * @param lastSequence sequence of the last entry, 0 when there is none
 * @param studyMark the mark of the study, drawn when it was made
 * @param plan the plan as last frozen
 * @param amendments changes of the plan after that, oldest first
 * @param sessions the sittings in the order opened
 * @param trials the trials that count, in the order run
 * @param skipped reason of each skipped position that has no trial, by position
 * @param notes notes in order
 * @param startConditions checks of start conditions in order
 * @param deviations departures from the plan, noted or seen, in order
 * @param cautionsShown cautions that were shown
 * @param cautionsAcknowledged cautions that a person confirmed
 * @param rulesLoosened safety rules set aside
 * @param looks interim looks in order
 * @param noise noise carried in, the last given
 * @param imported tables read in
 * @param simulated what simulated the data; empty for real data
 * @param paused whether the person stopped and has not gone on yet
 * @param oddities what a careful reader should know
 */
public record StudyState(long lastSequence, Optional<String> studyMark, Optional<Numbered<PlanFrozen>> plan,
        List<Numbered<PlanAmended>> amendments, List<Session> sessions, List<Trial> trials, SortedMap<Integer, String> skipped,
        List<Numbered<NoteAdded>> notes, List<Numbered<StartConditionsChecked>> startConditions, List<Deviation> deviations,
        List<Numbered<CautionShown>> cautionsShown, List<Numbered<CautionAcknowledged>> cautionsAcknowledged,
        List<Numbered<RuleLoosened>> rulesLoosened, List<Numbered<LookTaken>> looks, Optional<Numbered<NoiseCarriedIn>> noise,
        List<Numbered<ImportedTable>> imported, Optional<String> simulated, boolean paused, List<Oddity> oddities) {
    /** Copies every list. */
    public StudyState {
        amendments = List.copyOf(amendments);
        sessions = List.copyOf(sessions);
        trials = List.copyOf(trials);
        skipped = Collections.unmodifiableSortedMap(new TreeMap<>(skipped));
        notes = List.copyOf(notes);
        startConditions = List.copyOf(startConditions);
        deviations = List.copyOf(deviations);
        cautionsShown = List.copyOf(cautionsShown);
        cautionsAcknowledged = List.copyOf(cautionsAcknowledged);
        rulesLoosened = List.copyOf(rulesLoosened);
        looks = List.copyOf(looks);
        imported = List.copyOf(imported);
        oddities = List.copyOf(oddities);
    }

    /** The state that these entries amount to; entries in the order of their sequence. */
    public static StudyState fold(List<Entry> entries) {
        return new Folding(entries).state();
    }

    /** Digest of the plan in force: the last amendment's, else that of the plan as frozen; empty before freezing. */
    public Optional<String> planDigest() {
        if (!amendments.isEmpty()) {
            return Optional.of(amendments.get(amendments.size() - 1).event().digest());
        }
        return plan.isPresent() ? Optional.of(plan.get().event().digest()) : Optional.empty();
    }

    /** The session that is open now. */
    public Optional<Session> openSession() {
        for (Session session : sessions) {
            if (session.isOpen()) {
                return Optional.of(session);
            }
        }
        return Optional.empty();
    }

    /** The trial that counts at this position of the run sheet. */
    public Optional<Trial> trialAt(int position) {
        return trials.stream().filter(trial -> trial.position() == position).findFirst();
    }

    /** The positions of the run sheet that are recorded or skipped. */
    public Set<Integer> settled() {
        Set<Integer> settled = new HashSet<>(skipped.keySet());
        for (Trial trial : trials) {
            settled.add(trial.position());
        }
        return settled;
    }
}
