package coldproof.files.plan;

import coldproof.files.yaml.YamlForm;
import coldproof.plan.Comparison;
import coldproof.plan.Factor;
import coldproof.quantity.NearestWord;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads {@code compare}: what is compared with what. */
final class ComparisonReader {
    private final YamlForm form;
    private final List<Factor> factors;

    ComparisonReader(YamlForm form, List<Factor> factors) {
        this.form = form;
        this.factors = factors;
    }

    /** The comparison; empty, with problems noted, where it cannot be read. */
    Optional<Comparison> comparison() {
        Optional<YamlForm> compare = form.form("compare");
        if (compare.isEmpty()) {
            form.missing("compare", "{factor: ambient, baseline: room, against: chilled}");
            return Optional.empty();
        }
        YamlForm inner = compare.get();
        String name = inner.text("factor", "the name of a factor");
        String baseline = inner.text("baseline", "the level compared with");
        Map<String, Place> against = inner.words("against");
        if (against.isEmpty()) {
            inner.missing("against", "the changed level");
        }
        inner.finish();
        Optional<Factor> factor = Factor.named(name, factors);
        if (factor.isEmpty()) {
            List<String> names = factors.stream().map(Factor::name).toList();
            if (!name.isEmpty() && !names.isEmpty()) {
                form.problem(new Problem("no factor is called \"" + name + "\"", inner.placeOf("factor"),
                        "one of the factors below `factors`: " + String.join(", ", names), NearestWord.of(name, names),
                        "Correct the word, then run: coldproof plan check"));
            }
            return Optional.empty();
        }
        boolean good = level(factor.get(), baseline, inner.placeOf("baseline"));
        for (Map.Entry<String, Place> level : against.entrySet()) {
            good &= level(factor.get(), level.getKey(), level.getValue());
            if (level.getKey().equals(baseline)) {
                form.problem(Problem.of("\"" + baseline + "\" is compared with itself", level.getValue(), "another level of " + name,
                        "Name the changed level."));
                good = false;
            }
        }
        return good && !against.isEmpty() ? Optional.of(new Comparison(name, baseline, List.copyOf(against.keySet()))) : Optional.empty();
    }

    private boolean level(Factor factor, String level, Place place) {
        if (level.isEmpty() || factor.levelNames().contains(level)) {
            return !level.isEmpty();
        }
        form.problem(new Problem("the factor " + factor.name() + " has no level \"" + level + "\"", place,
                "one of its levels: " + String.join(", ", factor.levelNames()), NearestWord.of(level, factor.levelNames()),
                "Correct the word, then run: coldproof plan check"));
        return false;
    }
}
