package coldproof.job;

import coldproof.plan.Position;
import coldproof.quantity.Dimension;
import coldproof.reason.safety.Caution;
import coldproof.reason.safety.Reading;
import coldproof.reason.safety.SafetyRule;
import coldproof.reason.safety.SafetyScene;
import coldproof.reason.safety.StudySafety;
import coldproof.reason.safety.Value;
import coldproof.study.CautionAcknowledged;
import coldproof.study.CautionShown;
import coldproof.study.Numbered;
import coldproof.study.Observed;
import coldproof.study.RuleLoosened;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What the gate reads from and writes into the journal. */
final class GateJournal {
    private final BenchStudy study;
    private final Position position;

    GateJournal(BenchStudy study, Position position) {
        this.study = study;
        this.position = position;
    }

    /** The entry since which acknowledgements count: the opening of this session; the greatest number while it is not open. */
    private long since() {
        return study.view().state().openSession().filter(open -> open.number() == position.session()).map(open -> open.openedBy().sequence())
                .orElse(Long.MAX_VALUE);
    }

    boolean isAcknowledged(SafetyRule rule) {
        return study.view().state().cautionsAcknowledged().stream().anyMatch(one -> one.sequence() > since() && one.event().rule().equals(rule.id())
                && one.event().level().equals(rule.level().word()) && !one.event().by().isBlank());
    }

    boolean isSetAside(SafetyRule rule) {
        return rule.mayBeSetAside() && study.view().state().rulesLoosened().stream()
                .anyMatch(one -> one.sequence() > since() && one.event().rule().equals(rule.id()));
    }

    /** Notes that these were shown, and what was taken meanwhile, unless the same was noted last. */
    void shown(List<Caution> cautions, SafetyScene taken) {
        for (Caution caution : cautions) {
            Map<Reading, Value> values = new LinkedHashMap<>(caution.decided());
            values.putAll(taken.values());
            CautionShown event = new CautionShown(caution.rule().id(), caution.phase().word(), caution.level().word(), conditions(values));
            List<Numbered<CautionShown>> before = study.view().state().cautionsShown();
            boolean again = before.stream().filter(one -> one.event().rule().equals(event.rule())).reduce((first, second) -> second)
                    .filter(last -> last.event().equals(event)).isPresent();
            if (!again) {
                study.append(event);
            }
        }
    }

    /** Writes down what was taken, acknowledged and set aside. */
    void write(SafetyScene taken, List<Caution> stops, List<Caution> acknowledged, SafetyGate.Pass pass, StudySafety safety) {
        taken(taken);
        if (!acknowledged.isEmpty() || !stops.isEmpty()) {
            study.openSessionOf(position);
        }
        for (Caution stop : stops) {
            if (!isSetAside(stop.rule())) {
                study.append(new RuleLoosened(stop.rule().id(), pass.setAside().get(stop.rule().id())));
            }
        }
        for (StudySafety.Loosened loosened : safety.loosened()) {
            RuleLoosened event = new RuleLoosened(loosened.rule(), loosened.reason());
            if (study.view().state().rulesLoosened().stream().noneMatch(one -> one.event().equals(event))) {
                study.append(event);
            }
        }
        for (Caution caution : acknowledged) {
            study.append(new CautionAcknowledged(caution.rule().id(), caution.phase().word(), caution.level().word(), pass.acknowledgedBy().orElseThrow().strip(),
                    conditions(caution.decided())));
        }
    }

    /** Writes down rules set aside. */
    void setAside(Map<String, String> reasons) {
        reasons.forEach((rule, reason) -> study.append(new RuleLoosened(rule, reason)));
    }

    /** Writes down readings of the session, which is opened for it; they are no start conditions of a trial. */
    void taken(SafetyScene scene) {
        if (!scene.values().isEmpty()) {
            study.openSessionOf(position);
            study.sessionReadings(position.session(), conditions(scene.values()), List.of());
        }
    }

    /** Readings in the form of the journal. */
    static Map<String, Observed> conditions(Map<Reading, Value> values) {
        Map<String, Observed> conditions = new LinkedHashMap<>();
        values.forEach((reading, value) -> conditions.put(reading.word(), value.number().isPresent()
                ? Observed.of(value.number().getAsDouble(), reading.dimension().map(Dimension::unit).orElse("")) : Observed.of(value.word())));
        return conditions;
    }
}
