package coldproof.files.plan;

import coldproof.files.yaml.YamlForm;
import coldproof.files.yaml.YamlNode;
import coldproof.plan.Change;
import coldproof.plan.Factor;
import coldproof.plan.Level;
import coldproof.quantity.Celsius;
import coldproof.quantity.Dimension;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.QuantityText;
import coldproof.quantity.QuantityText.Bare;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads {@code factors}. */
final class FactorsReader {
    private final YamlForm plan;
    private final List<Problem> problems;

    FactorsReader(YamlForm plan, List<Problem> problems) {
        this.plan = plan;
        this.problems = problems;
    }

    List<Factor> factors() {
        Optional<YamlForm> factors = plan.form("factors");
        if (factors.isEmpty() || factors.get().keys().isEmpty()) {
            plan.missing("factors", "ambient: {change: per session, levels: {room: 21 °C, chilled: -9 °C}}");
            return List.of();
        }
        List<Factor> read = new ArrayList<>();
        for (String name : factors.get().keys()) {
            Optional<Factor> factor = factor(name, factors.get().form(name).orElseThrow());
            if (factor.isPresent()) {
                read.add(factor.get());
            }
        }
        int perSession = 0;
        for (Factor factor : read) {
            perSession += factor.variesBySession() ? 1 : 0;
        }
        if (perSession > 1) {
            problems.add(Problem.of(perSession + " factors change per session", plan.placeOfKey("factors"),
                    "at most one factor with several levels that changes per session",
                    "Hold all but one (a single level), or change them in a study of their own."));
        }
        return read;
    }

    private Optional<Factor> factor(String name, YamlForm form) {
        if (!form.has("change")) {
            form.missing("change", "per session (hard to change) or per trial (easy to change)");
        }
        Optional<String> change = form.word("change", List.of("per session", "per trial"));
        List<Level> levels = levels(form);
        form.finish();
        if (levels.isEmpty() || change.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Factor(name, change.get().equals("per session") ? Change.PER_SESSION : Change.PER_TRIAL, levels));
    }

    private List<Level> levels(YamlForm form) {
        List<Level> levels = new ArrayList<>();
        Optional<YamlNode> node = form.node("levels");
        if (node.isPresent() && node.get() instanceof YamlNode.Mapping) {
            YamlForm settings = form.form("levels").orElseThrow();
            for (String level : settings.keys()) {
                levels.add(level(level, settings.optionalText(level).orElse("")));
            }
        } else {
            for (Map.Entry<String, Place> level : form.words("levels").entrySet()) {
                levels.add(Level.named(level.getKey()));
            }
        }
        if (levels.isEmpty()) {
            form.missing("levels", "a list of words, or {room: 21 °C, chilled: -9 °C}");
        }
        return levels;
    }

    /** A setting that reads as a temperature is one; any other is only words. */
    private static Level level(String name, String setting) {
        try {
            double celsius = QuantityText.read(setting, Dimension.TEMPERATURE, Bare.REFUSED);
            return new Level(name, setting, Optional.of(new Celsius(celsius)));
        } catch (QuantityText.Unreadable words) {
            return new Level(name, setting, Optional.empty());
        }
    }
}
