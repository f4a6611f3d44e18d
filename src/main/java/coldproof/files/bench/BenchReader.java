package coldproof.files.bench;

import coldproof.files.yaml.YamlForm;
import coldproof.files.yaml.YamlTree;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.rehearse.bench.BenchFact;
import coldproof.reason.rehearse.bench.BenchParameters;
import coldproof.reason.rehearse.bench.BenchSketch;
import coldproof.reason.rehearse.bench.InventedDevices;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** Reads a bench strictly and reports every problem it finds. */
public final class BenchReader {
    static final String VERSION = "coldproof bench";
    static final String NONE = "none";

    private final List<Problem> problems;
    private final YamlForm form;

    private BenchReader(YamlForm form, List<Problem> problems) {
        this.form = form;
        this.problems = problems;
    }

    /**
     * Reads a bench.
     *
     * @param file name shown in problems
     * @param text the YAML
     * @throws Refused with every problem found
     */
    public static BenchSketch read(String file, String text) {
        List<Problem> problems = new ArrayList<>();
        return new BenchReader(YamlForm.of(YamlTree.read(file, text), "the bench", problems), problems).sketch();
    }

    private BenchSketch sketch() {
        if (form.whole(VERSION, 1, 1).isEmpty() && !form.has(VERSION)) {
            form.missing(VERSION, "1");
        }
        String name = form.text("name", "what the device is called");
        List<String> names = InventedDevices.all().stream().map(BenchParameters::name).toList();
        String like = form.word("like", names).orElse(names.get(0));
        Map<BenchFact, Double> facts = new EnumMap<>(BenchFact.class);
        for (BenchFact fact : BenchFact.values()) {
            read(fact, facts);
        }
        form.finish();
        stopAtProblems();
        BenchParameters lender = InventedDevices.all().stream().filter(device -> device.name().equals(like)).findFirst().orElseThrow();
        BenchSketch sketch = new BenchSketch(name, lender, facts);
        contradictions(sketch);
        stopAtProblems();
        return sketch;
    }

    private void stopAtProblems() {
        if (!problems.isEmpty()) {
            throw new Refused(problems);
        }
    }

    private void read(BenchFact fact, Map<BenchFact, Double> facts) {
        if (fact.mayBeNone() && form.optionalText(fact.key()).filter(NONE::equals).isPresent()) {
            facts.put(fact, Double.POSITIVE_INFINITY);
            return;
        }
        OptionalDouble value = form.quantity(fact.key(), fact.dimension());
        if (value.isEmpty()) {
            return;
        }
        if (value.getAsDouble() >= fact.least() && value.getAsDouble() <= fact.most()) {
            facts.put(fact, value.getAsDouble());
        } else {
            form.problem(Problem.of("`" + fact.key() + "` is out of range", form.placeOf(fact.key()),
                    "from " + fact.least() + " to " + fact.most() + " " + fact.dimension().unit() + (fact.mayBeNone() ? ", or none" : ""), "Correct the value."));
        }
    }

    private void contradictions(BenchSketch sketch) {
        try {
            sketch.parameters();
        } catch (IllegalArgumentException contradiction) {
            Place place = form.place();
            form.problem(Problem.of("no device can be made of this: " + contradiction.getMessage(), place, "facts that go together",
                    "Correct a value, or leave it out: the device it is like lends it."));
        }
    }
}
