package coldproof.reason.verdict;

import coldproof.stats.Tail;
import coldproof.stats.multiple.Holm;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;

/** Judges several changes against one baseline so that the error rates hold for all of them at once. */
public final class Comparisons {
    private static final String DUNNETT = "Dunnett";
    private static final String SHARED = "Holm, intervals by Bonferroni";

    private Comparisons() {}

    /**
     * Judges the changes together: by Dunnett's distribution where one fit tests them all, else each alone with an equal share of the error
     * rates. One change is judged as it is alone.
     *
     * @param questions alike but for the changed level; one or more, all that were planned
     * @param trials of any level
     */
    public static List<Compared> judge(List<Question> questions, List<Observation> trials, RunOrders orders, RandomGenerator chance) {
        return judge(questions, trials, orders, chance, ErrorRates.of(questions.get(0)));
    }

    /** The same at other error rates than the question's. */
    static List<Compared> judge(List<Question> questions, List<Observation> trials, RunOrders orders, RandomGenerator chance, ErrorRates rates) {
        List<Verdicts> each = questions.stream().map(question -> new Verdicts(question, trials, orders, chance)).toList();
        if (each.size() == 1) {
            Verdict alone = each.get(0).verdict(Ruler.alone(rates));
            OptionalDouble p = alone.estimate().isPresent() ? OptionalDouble.of(alone.estimate().get().p()) : OptionalDouble.empty();
            return List.of(new Compared(questions.get(0), alone, p, "none"));
        }
        Optional<Family> family = family(questions, each, trials);
        return family.isPresent() ? together(questions, each, family.get(), rates) : shared(questions, each, rates);
    }

    private static Optional<Family> family(List<Question> questions, List<Verdicts> each, List<Observation> trials) {
        Stratum stratum = each.get(0).stratum();
        boolean alike = each.stream().allMatch(one -> one.standsAlone() && one.stratum() == stratum);
        return alike ? Family.of(questions, trials, stratum).filter(family -> !family.comparisons().estimate(0).isWithoutNoise()) : Optional.empty();
    }

    private static List<Compared> together(List<Question> questions, List<Verdicts> each, Family family, ErrorRates rates) {
        Ruler ruler = Ruler.together(rates, family.comparisons());
        List<Compared> all = new ArrayList<>();
        for (int i = 0; i < each.size(); i++) {
            int comparison = i;
            String method = family.method() + ", Dunnett's adjustment for " + each.size() + " changes";
            Verdict verdict = each.get(i).verdict(ruler, alone -> new Analysis(family.comparisons().estimate(comparison), method, alone.sessionLogSd(),
                    alone.runLogSd()));
            all.add(new Compared(questions.get(i), verdict, OptionalDouble.of(family.comparisons().adjustedP(i, Tail.TWO)), DUNNETT));
        }
        return all;
    }

    private static List<Compared> shared(List<Question> questions, List<Verdicts> each, ErrorRates rates) {
        Ruler ruler = Ruler.shared(rates, each.size());
        List<Verdict> verdicts = each.stream().map(one -> one.verdict(ruler)).toList();
        double[] plain = verdicts.stream().mapToDouble(verdict -> verdict.estimate().map(Verdict.Change::p).orElse(1.0)).toArray();
        double[] adjusted = Holm.adjusted(plain);
        return IntStream.range(0, each.size()).mapToObj(i -> new Compared(questions.get(i), verdicts.get(i),
                verdicts.get(i).estimate().isPresent() ? OptionalDouble.of(adjusted[i]) : OptionalDouble.empty(), SHARED)).toList();
    }

    /**
     * What became of the study as a whole: it fails when a change fails, passes when all pass.
     *
     * @return the first comparison that has the study's decision
     */
    public static Compared deciding(List<Compared> all) {
        for (Decision decision : List.of(Decision.FAIL, Decision.UNDECIDED)) {
            for (Compared one : all) {
                if (one.verdict().decision() == decision) {
                    return one;
                }
            }
        }
        return all.get(0);
    }
}
