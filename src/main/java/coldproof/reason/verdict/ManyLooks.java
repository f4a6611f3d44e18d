package coldproof.reason.verdict;

import coldproof.reason.looks.LookPoint;
import coldproof.reason.looks.LookSchedule;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator.SplittableGenerator;

/**
 * The decision of a whole study, with the looks of its plan, for many sets of scores of one run sheet: the study ends at the first look that
 * decides, as {@link LookedVerdicts} would have it, else at its end. Immutable.
 */
public final class ManyLooks {
    /**
     * How one study ended.
     *
     * @param word what its scores said then
     * @param decision what became of the claim
     * @param sameness whether the interval that judges sameness lay within what matters
     * @param look place of the look in {@link #looks()}, first is 0
     */
    public record Ended(Word word, Decision decision, boolean sameness, int look) {}

    private final List<LookPoint> looks;
    private final List<ManyVerdicts> verdicts;

    private ManyLooks(List<LookPoint> looks, List<ManyVerdicts> verdicts) {
        this.looks = List.copyOf(looks);
        this.verdicts = List.copyOf(verdicts);
    }

    /**
     * Makes a run sheet ready.
     *
     * @param question what is asked
     * @param comparisons how many changes share the error rates, 1 or more
     * @param schedule where the looks lie
     * @param trials one for each position of the run sheet, in order; their scores do not matter
     * @param chance as for {@link LookedVerdicts#judge}: the same gives the same bounds
     */
    public static ManyLooks of(Question question, int comparisons, LookSchedule schedule, List<Observation> trials, SplittableGenerator chance) {
        LookBounds bounds = new LookBounds(question.falseAlarm(), chance);
        List<LookPoint> looks = new ArrayList<>();
        List<ManyVerdicts> seen = new ArrayList<>();
        for (LookPoint point : schedule.points()) {
            ManyVerdicts until = ManyVerdicts.of(question, trials.subList(0, point.lastPosition()));
            boolean last = point.lastPosition() == trials.size();
            boolean carries = until.obstacle().isEmpty() && bounds.add(point.fraction(), until.degreesOfFreedom());
            if (carries || last) {
                looks.add(point);
                seen.add(until);
            }
        }
        return new ManyLooks(looks, ruled(question, comparisons, bounds, seen));
    }

    private static List<ManyVerdicts> ruled(Question question, int comparisons, LookBounds bounds, List<ManyVerdicts> seen) {
        List<ManyVerdicts> verdicts = new ArrayList<>();
        for (int k = 0; k < seen.size(); k++) {
            boolean judged = seen.get(k).obstacle().isEmpty();
            ErrorRates rates = seen.size() > 1 && judged ? bounds.rates(k) : ErrorRates.of(question);
            verdicts.add(seen.get(k).by(comparisons == 1 ? Ruler.alone(rates) : Ruler.shared(rates, comparisons)));
        }
        return verdicts;
    }

    /** The looks that can decide, the end of the study the last. */
    public List<LookPoint> looks() {
        return looks;
    }

    /** Why no scores at all could carry a verdict at the end; empty when they can. */
    public Optional<String> obstacle() {
        return verdicts.get(verdicts.size() - 1).obstacle();
    }

    /**
     * Runs one study to its end.
     *
     * @param logScores natural logarithms turned so that better is larger, one for each position of the run sheet
     */
    public Ended judge(double[] logScores) {
        int last = verdicts.size() - 1;
        for (int look = 0; look < last; look++) {
            ManyVerdicts.Outcome outcome = verdicts.get(look).judge(logScores);
            if (outcome.decision() != Decision.UNDECIDED) {
                return new Ended(outcome.word(), outcome.decision(), outcome.sameness(), look);
            }
        }
        if (obstacle().isPresent()) {
            return new Ended(Word.UNDECIDED, Decision.UNDECIDED, false, last);
        }
        ManyVerdicts.Outcome outcome = verdicts.get(last).judge(logScores);
        return new Ended(outcome.word(), outcome.decision(), outcome.sameness(), last);
    }
}
