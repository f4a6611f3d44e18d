package coldproof.reason.safety;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a study changes about a rule.
 *
 * @param level another level
 * @param when conditions that take the place of the rule's conditions on the same readings; more readings may be asked for
 */
public record RuleChange(Optional<SafetyLevel> level, List<Condition> when) {
    /** Copies. */
    public RuleChange {
        when = List.copyOf(when);
    }

    /** The changed rule. */
    public SafetyRule of(SafetyRule rule) {
        List<Condition> conditions = new ArrayList<>();
        for (Condition old : rule.when()) {
            conditions.add(when.stream().filter(change -> change.reading() == old.reading()).findFirst().orElse(old));
        }
        when.stream().filter(change -> rule.when().stream().noneMatch(old -> old.reading() == change.reading())).forEach(conditions::add);
        return rule.under(conditions).at(level.orElse(rule.level()));
    }

    /**
     * Whether the changed rule asks for at least as much wherever the old one held: no lower level, and no condition that an old one does not
     * already guarantee.
     */
    public boolean tightens(SafetyRule rule) {
        SafetyRule changed = of(rule);
        boolean level = changed.level().compareTo(rule.level()) >= 0;
        return level && changed.when().stream().allMatch(now -> rule.when().stream().anyMatch(now::covers));
    }
}
