package coldproof.files.plan;

import coldproof.files.yaml.YamlForm;
import coldproof.plan.AbortLimits;
import coldproof.plan.StartConditions;
import coldproof.quantity.Dimension;
import coldproof.quantity.Problem;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads {@code start} and {@code abort}: what must hold before a trial, and what stops one. */
final class ConditionsReader {
    private final YamlForm form;

    ConditionsReader(YamlForm form) {
        this.form = form;
    }

    /** What must hold before a trial; nothing where none is written. */
    StartConditions start() {
        Optional<YamlForm> start = form.form("start");
        if (start.isEmpty()) {
            return StartConditions.NONE;
        }
        YamlForm inner = start.get();
        OptionalDouble within = withTail(inner, "die temperature within", "of first trial", Dimension.TEMPERATURE_DIFFERENCE);
        OptionalDouble battery = charge(inner, "battery at least");
        Optional<String> source = inner.word("power source", List.of("wall", "battery"));
        inner.finish();
        return new StartConditions(within, battery, source);
    }

    /** What stops a trial; nothing where none is written. */
    AbortLimits abort() {
        Optional<YamlForm> abort = form.form("abort");
        if (abort.isEmpty()) {
            return AbortLimits.NONE;
        }
        YamlForm inner = abort.get();
        OptionalDouble die = inner.quantity("die temperature above", Dimension.TEMPERATURE);
        OptionalDouble battery = charge(inner, "battery below");
        OptionalDouble cell = withTail(inner, "cell temperature below", "while charging", Dimension.TEMPERATURE);
        inner.finish();
        return new AbortLimits(die, battery, cell);
    }

    /** A state of charge, 0 to 100 %. */
    private OptionalDouble charge(YamlForm inner, String key) {
        OptionalDouble percent = inner.quantity(key, Dimension.PERCENT);
        if (percent.isPresent() && !(percent.getAsDouble() >= 0 && percent.getAsDouble() <= 100)) {
            form.problem(Problem.of("`" + key + "` is " + percent.getAsDouble() + " %", inner.placeOf(key), "a state of charge from 0 % to 100 %", "Write such a charge."));
            return OptionalDouble.empty();
        }
        return percent;
    }

    /** A quantity followed by words that say of what: {@code 3 K of first trial}. The words may be left out. */
    private OptionalDouble withTail(YamlForm inner, String key, String tail, Dimension dimension) {
        Optional<String> text = inner.optionalText(key);
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        String quantity = text.get().strip();
        if (quantity.endsWith(tail)) {
            quantity = quantity.substring(0, quantity.length() - tail.length()).strip();
        }
        return inner.quantityOf(quantity, inner.placeOf(key), "`" + key + "`", dimension);
    }
}
