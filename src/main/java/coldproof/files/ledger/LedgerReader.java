package coldproof.files.ledger;

import coldproof.files.yaml.YamlForm;
import coldproof.files.yaml.YamlNode;
import coldproof.files.yaml.YamlTree;
import coldproof.plan.Better;
import coldproof.quantity.Dimension;
import coldproof.quantity.NearestWord;
import coldproof.quantity.Problem;
import coldproof.quantity.QuantityText;
import coldproof.quantity.Refused;
import coldproof.reason.ledger.LedgerDevice;
import coldproof.reason.ledger.LedgerFigure;
import coldproof.reason.ledger.LedgerSheet;
import coldproof.reason.ledger.LedgerWorkload;
import coldproof.reason.ledger.StudyFigures;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads a ledger file; every mistake in it is reported with its place. */
public final class LedgerReader {
    private static final double USUAL_LEVEL = 0.95;
    private static final int MOST_DEVICES = 500;
    private final StudyFigures studies;
    private final List<Problem> problems = new ArrayList<>();
    private String currency = "";

    private LedgerReader(StudyFigures studies) {
        this.studies = studies;
    }

    /**
     * Reads a ledger.
     *
     * @param name the file as the person knows it
     * @param studies gives figures of one's own studies
     * @throws Refused with every problem found
     */
    public static LedgerSheet read(String name, String text, StudyFigures studies) {
        return new LedgerReader(studies).sheet(YamlTree.read(name, text));
    }

    private LedgerSheet sheet(YamlNode root) {
        YamlForm form = YamlForm.of(root, "the ledger", problems);
        if (!form.text("coldproof ledger", "1").equals("1")) {
            form.problem(Problem.of("the ledger is of another version", form.placeOf("coldproof ledger"), "`coldproof ledger: 1`", "Write 1, or use a newer version."));
        }
        String title = form.text("title", "Trail laptops under the full render");
        String reference = form.text("reference", "the name of a device below");
        double level = level(form);
        boolean simulated = form.word("simulated", List.of("yes", "no")).orElse("no").equals("yes");
        List<LedgerWorkload> workloads = workloads(form);
        List<LedgerDevice> devices = devices(form, workloads);
        form.finish();
        List<String> names = devices.stream().map(LedgerDevice::name).toList();
        if (!reference.isBlank() && !names.contains(reference) && form.has("devices")) {
            problems.add(new Problem("no device is called \"" + reference + "\"", form.placeOf("reference"), "one of: " + String.join(", ", names),
                    NearestWord.of(reference, names), "Correct the word."));
        }
        if (!problems.isEmpty()) {
            throw new Refused(problems);
        }
        return new LedgerSheet(title, reference, level, currency, simulated, workloads, devices);
    }

    private double level(YamlForm form) {
        double percent = form.quantity("confidence", Dimension.PERCENT).orElse(100 * USUAL_LEVEL);
        if (!(percent >= 50 && percent < 100)) {
            form.problem(Problem.of("`confidence` is " + percent + " %", form.placeOf("confidence"), "from 50 % to below 100 %", "Write such a level, usually 95 %."));
            return USUAL_LEVEL;
        }
        return percent / 100;
    }

    private List<LedgerWorkload> workloads(YamlForm form) {
        List<LedgerWorkload> workloads = new ArrayList<>();
        Optional<YamlForm> all = form.form("workloads");
        if (all.isEmpty() || all.get().keys().isEmpty()) {
            form.missing("workloads", "workloads: {full render: {unit: frames/s, better: higher}}");
            return workloads;
        }
        for (String name : all.get().keys()) {
            all.get().form(name).ifPresent(one -> {
                String unit = one.optionalText("unit").orElse("");
                Optional<String> better = one.word("better", List.of(Better.HIGHER.word(), Better.LOWER.word()));
                if (!one.has("better")) {
                    one.missing("better", "higher, or lower for a time or an energy");
                }
                one.finish();
                workloads.add(new LedgerWorkload(name, unit, better.orElse("higher").equals("lower") ? Better.LOWER : Better.HIGHER));
            });
        }
        return workloads;
    }

    private List<LedgerDevice> devices(YamlForm form, List<LedgerWorkload> workloads) {
        List<LedgerDevice> devices = new ArrayList<>();
        Optional<YamlForm> all = form.form("devices");
        if (all.isEmpty() || all.get().keys().size() < 2 || all.get().keys().size() > MOST_DEVICES) {
            form.problem(Problem.of("the ledger has " + all.map(found -> found.keys().size()).orElse(0) + " devices", form.placeOfKey("devices"),
                    "from 2 to " + MOST_DEVICES + " below `devices`", "Add the devices to compare, each by its name."));
            return devices;
        }
        for (String name : all.get().keys()) {
            all.get().form(name).ifPresent(one -> devices.add(device(name, one, workloads)));
        }
        return devices;
    }

    private LedgerDevice device(String name, YamlForm form, List<LedgerWorkload> workloads) {
        Optional<String> silicon = form.optionalText("silicon").filter(text -> !text.isBlank());
        Optional<String> constraint = form.optionalText("constraint").filter(text -> !text.isBlank() && !text.equals("none"));
        if (constraint.isPresent() && silicon.isEmpty()) {
            form.missing("silicon", "what this unit shares with one that nothing holds back");
        }
        Optional<LedgerFigure> power = power(form);
        OptionalDouble price = price(form);
        Map<String, LedgerFigure> figures = new LinkedHashMap<>();
        Optional<YamlForm> all = form.form("figures");
        if (all.isEmpty()) {
            form.missing("figures", "figures: {" + workloads.stream().findFirst().map(LedgerWorkload::name).orElse("full render")
                    + ": {value: 61.8, repeats: 5, spread: 0.9, source: own test, date: 2026-01-14}}");
        } else {
            figures(all.get(), workloads, figures);
        }
        form.finish();
        return new LedgerDevice(name, silicon, constraint, power, price, figures);
    }

    private void figures(YamlForm all, List<LedgerWorkload> workloads, Map<String, LedgerFigure> figures) {
        List<String> known = workloads.stream().map(LedgerWorkload::name).toList();
        for (String name : all.keys()) {
            Optional<LedgerWorkload> workload = workloads.stream().filter(one -> one.name().equals(name)).findFirst();
            if (workload.isEmpty()) {
                all.has(name);
                all.problem(new Problem("\"" + name + "\" is no workload of this ledger", all.placeOfKey(name), "one of: " + String.join(", ", known),
                        NearestWord.of(name, known), "Correct the word, or add it to `workloads`."));
                continue;
            }
            all.form(name).flatMap(form -> new FigureReader(form, problems).figure(workload.get(), studies)).ifPresent(figure -> figures.put(name, figure));
        }
    }

    /** A plain power, taken as known exactly, or one with its uncertainty like a figure. */
    private Optional<LedgerFigure> power(YamlForm form) {
        Optional<YamlNode> node = form.node("power");
        if (node.isPresent() && node.get() instanceof YamlNode.Mapping) {
            return form.form("power").flatMap(one -> new FigureReader(one, problems).stated("W", false));
        }
        OptionalDouble watts = form.quantity("power", Dimension.POWER);
        if (watts.isPresent() && !(watts.getAsDouble() > 0)) {
            form.problem(Problem.of("`power` is not above zero", form.placeOf("power"), Dimension.POWER.expected(), "Write what the device draws under the workload."));
            return Optional.empty();
        }
        return watts.isEmpty() ? Optional.empty()
                : Optional.of(new LedgerFigure(watts.getAsDouble(), OptionalDouble.of(0), Double.POSITIVE_INFINITY, java.util.OptionalInt.empty(), "as given", "", false));
    }

    private OptionalDouble price(YamlForm form) {
        Optional<String> text = form.optionalText("price");
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        String[] parts = text.get().strip().split("\\s+", 2);
        String word = parts.length > 1 ? parts[1] : "";
        try {
            double amount = QuantityText.number(parts[0]);
            if (amount > 0 && !word.isEmpty() && (currency.isEmpty() || currency.equals(word))) {
                currency = word;
                return OptionalDouble.of(amount);
            }
        } catch (QuantityText.Unreadable unreadable) {
            form.problem(Problem.of("`price` is \"" + text.get() + "\": " + parts[0] + " is " + unreadable.getMessage(), form.placeOf("price"),
                    "a number and the word of the currency, such as 1450 crowns", "Write it without thousands separators."));
            return OptionalDouble.empty();
        }
        form.problem(Problem.of("`price` is \"" + text.get() + "\"", form.placeOf("price"),
                "a number above 0 and " + (currency.isEmpty() ? "the word of the currency, such as 1450 crowns" : "the currency of the other devices, " + currency),
                "Convert it, or leave it out."));
        return OptionalDouble.empty();
    }
}
