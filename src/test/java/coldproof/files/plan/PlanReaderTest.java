package coldproof.files.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldproof.plan.Plan;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class PlanReaderTest {
    private static final String GOOD = """
            coldproof: 1
            title: Does chilled air lift the rate?
            device: trail laptop
            metric: {name: render rate, unit: frames/s, better: higher}
            compare: {factor: ambient, baseline: room, against: chilled}
            matters: 3 %
            claim: gain                 # gain | same (equivalence)
            factors:
              ambient: {change: per session, levels: {room: 21 °C, chilled: -9 °C}}
              fan:     {change: per trial,   levels: [auto, maximum]}
            noise:  {run to run: 1.2 %, session to session: 0.8 %, from: pilot}
            errors: {false alarm: 5 %, missed gain: 10 %}
            looks:  2
            layout: {sessions: {room: 4, chilled: 3}, trials per condition: 2, order: counterbalanced}
            budget: {trial: 4 min, soak: 20 min, set-up: {room: 5 min, chilled: 25 min}, outdoors at most: 3 h}
            start:  {die temperature within: 3 K of first trial, battery at least: 40 %, power source: wall}
            abort:  {die temperature above: 105 °C, battery below: 15 %, cell temperature below: 0 °C while charging}
            seed: 20260114
            """;

    static Stream<Path> readyPlans() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("plans"))) {
            return files.filter(file -> file.toString().endsWith(".yaml")).sorted().toList().stream();
        }
    }

    @Test
    void readsAPlanWithAllItsParts() {
        Plan plan = PlanReader.read("plan.yaml", GOOD);
        assertEquals(List.of("auto", "maximum"), plan.factor("fan").levelNames());
        assertEquals(7, plan.layout().total());
        assertEquals(180 * 60, plan.budget().outdoorsAtMostSeconds().getAsDouble());
        assertEquals(45 * 60, plan.budget().openingSeconds("chilled"));
        assertEquals(List.of("chilled"), plan.budget().outdoors());
        assertEquals(3, plan.start().dieWithinKelvins().getAsDouble());
        assertEquals(0.9, plan.errors().power(), 1e-15);
    }

    @Test
    void aWordLikeOffStaysAWord() {
        Plan plan = PlanReader.read("plan.yaml", GOOD.replace("auto, maximum", "off, on"));
        assertEquals(List.of("off", "on"), plan.factor("fan").levelNames());
    }

    @ParameterizedTest
    @MethodSource("readyPlans")
    void everyReadyPlanReadsAndSurvivesBeingWrittenAndReadAgain(Path file) throws IOException {
        Plan plan = PlanReader.read(file.toString(), Files.readString(file));
        assertEquals(plan, PlanReader.read("again.yaml", PlanWriter.write(plan)));
    }

    @ParameterizedTest(name = "{1} becomes {2}")
    @CsvSource(delimiter = '|', value = {
        "5|factor: ambient,|factor: ambeint,|no factor is called|ambient", "5|against: chilled}|against: child}|has no level|chilled",
        "6|matters: 3 %|matters: 3|without a unit|", "6|matters: 3 %|maters: 3 %|unknown key|matters", "7|claim: gain|claim: gian|\"gian\"|gain",
        "14|sessions: {room: 4, chilled: 3}|sessions: {room: 4}|lacks `chilled`|", "14|order: counterbalanced|order: counterbalance|counterbalance|counterbalanced",
        "14|sessions: {room: 4, chilled: 3}|trials: 8|changes per session|", "15|trial: 4 min|trial: 4 mins|no unit here|",
        "18|seed: 20260114|seed: lucky|seed|", "1|coldproof: 1|coldproof: 2|plan format|", "13|looks:  2|looks: 0|whole number|",
    })
    void everyMistakeIsPlacedAndNearWordsNamed(int line, String right, String wrong, String what, String nearest) {
        Refused refused = assertThrows(Refused.class, () -> PlanReader.read("plan.yaml", GOOD.replace(right, wrong)));
        assertTrue(refused.problems().stream().anyMatch(problem -> fits(problem, line, what, nearest)), refused.problems().toString());
    }

    private static boolean fits(Problem problem, int line, String what, String nearest) {
        String all = problem.what() + " " + problem.expected();
        return problem.where().line() == line && all.contains(what) && (nearest == null || problem.nearest().contains(nearest));
    }

    @ParameterizedTest
    @CsvSource({"metric, metrik", "compare, compar", "matters, maters", "claim, claym", "layout, layuot"})
    void aMistypedKeyIsOneMistake(String right, String wrong) {
        Refused refused = assertThrows(Refused.class, () -> PlanReader.read("plan.yaml", GOOD.replace("\n" + right + ":", "\n" + wrong + ":")));
        assertEquals(1, refused.problems().size(), refused.problems().toString());
        assertEquals(List.of(right), refused.problems().get(0).nearest());
    }

    @Test
    void allProblemsAreReportedAtOnce() {
        String bad = GOOD.replace("matters: 3 %", "matters: lots").replace("claim: gain", "claim: gian").replace("seed: 20260114", "sed: 1");
        assertEquals(3, assertThrows(Refused.class, () -> PlanReader.read("plan.yaml", bad)).problems().size());
    }

    /** Mutations by a seeded generator: the reader answers with a plan or with problems, never with anything else. */
    @Test
    void mutatedPlansAreReadOrRefused() {
        SplittableRandom chance = new SplittableRandom(7);
        for (int i = 0; i < 3000; i++) {
            StringBuilder text = new StringBuilder(GOOD);
            for (int edits = chance.nextInt(1, 5); edits > 0; edits--) {
                int at = chance.nextInt(text.length());
                switch (chance.nextInt(3)) {
                    case 0 -> text.deleteCharAt(at);
                    case 1 -> text.insert(at, "{}[]:,-%°\n\t\"'&*!?#|>\u0000é".charAt(chance.nextInt(22)));
                    default -> text.setCharAt(at, (char) chance.nextInt(1, 0x2fff));
                }
            }
            String mutated = text.toString();
            try {
                PlanReader.read("plan.yaml", mutated);
            } catch (Refused refused) {
                assertTrue(!refused.problems().isEmpty());
            } catch (RuntimeException other) {
                throw new AssertionError("mutation " + i + " of seed 7:\n" + mutated, other);
            }
        }
    }
}
