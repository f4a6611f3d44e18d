package coldproof.job;

import coldproof.plan.NoiseAssumption;
import coldproof.plan.Plan;
import coldproof.reason.verdict.Observation;
import coldproof.reason.verdict.Question;
import coldproof.reason.verdict.RunOrders;
import coldproof.reason.verdict.Verdict;
import coldproof.reason.verdict.Verdicts;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/** Judges a study, or a table of trials made elsewhere. */
public final class VerdictJob {
    private static final long SEED = 20_260_114; // of the randomisation test's sample: the same data give the same p

    private VerdictJob() {}

    /**
     * A verdict with its question.
     *
     * @param question what was asked
     * @param verdict the answer
     * @param deviations where the study left its plan
     */
    public record Answer(Question question, Verdict verdict, List<String> deviations) {
        /** Copies. */
        public Answer {
            deviations = List.copyOf(deviations);
        }
    }

    /**
     * Judges a table.
     *
     * @throws coldproof.quantity.Refused if the table, a column or a cell is wrong
     */
    public static Answer ofTable(TrialsQuestion question) {
        List<Observation> trials = TrialsTable.observations(question);
        Question asked = question.question();
        return new Answer(asked, Verdicts.judge(asked, trials, RunOrders.unknown(), new SplittableRandom(SEED)), List.of());
    }

    /** Judges a study: one answer for each changed level of its plan. */
    public static List<Answer> ofStudy(StudyView study) {
        List<Observation> trials = study.observations();
        List<Answer> answers = new ArrayList<>();
        Plan plan = study.plan();
        for (String against : plan.compare().against()) {
            Question question = question(study, against);
            Verdict verdict = Verdicts.judge(question, trials, RunOrders.of(plan), new SplittableRandom(plan.seed()));
            answers.add(new Answer(question, verdict, study.deviations()));
        }
        return answers;
    }

    /** The question of a plan for one changed level. */
    static Question question(StudyView study, String against) {
        Plan plan = study.plan();
        Optional<NoiseAssumption> carried = study.state().noise().map(noise -> new NoiseAssumption(noise.event().runCvPercent(), noise.event().sessionCvPercent(),
                df(noise.event().runDegreesOfFreedom()), df(noise.event().sessionDegreesOfFreedom()), noise.event().from())).or(plan::noise);
        return new Question(plan.compare().factor(), plan.compare().baseline(), against, plan.metric().better(), plan.mattersPercent(), plan.claim(),
                plan.errors().falseAlarm(), Optional.of(study.change()), carried);
    }

    private static java.util.OptionalDouble df(double degreesOfFreedom) {
        return degreesOfFreedom >= 1 ? java.util.OptionalDouble.of(degreesOfFreedom) : java.util.OptionalDouble.empty();
    }
}
