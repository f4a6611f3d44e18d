package coldproof.job;

import coldproof.plan.NoiseAssumption;
import coldproof.plan.Plan;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.looks.LookSchedule;
import coldproof.reason.verdict.Compared;
import coldproof.reason.verdict.Comparisons;
import coldproof.reason.verdict.LookedVerdicts;
import coldproof.reason.verdict.Observation;
import coldproof.reason.verdict.Question;
import coldproof.reason.verdict.RunOrders;
import coldproof.reason.verdict.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;

/** Judges a study, or a table of trials made elsewhere. */
public final class VerdictJob {
    private static final long SEED = 20_260_114; // of the randomisation test's sample: the same data give the same p

    private VerdictJob() {}

    /**
     * A verdict with its question.
     *
     * @param compared what was asked, the answer, and how it was adjusted where several changes are judged together
     * @param deviations damage to the record, and where the study left its plan
     */
    public record Answer(Compared compared, List<String> deviations) {
        /** Copies. */
        public Answer {
            deviations = List.copyOf(deviations);
        }

        /** What was asked. */
        public Question question() {
            return compared.question();
        }

        /** The answer. */
        public Verdict verdict() {
            return compared.verdict();
        }
    }

    /**
     * Judges a table: one answer for each changed level.
     *
     * @throws coldproof.quantity.Refused if the table, a column or a cell is wrong
     */
    public static List<Answer> ofTable(TrialsQuestion question) {
        TrialsTable.Found found = TrialsTable.find(question);
        List<Question> asked = found.against().stream().map(question::question).toList();
        return answers(asked, found.observations(), RunOrders.unknown(), SEED, List.of());
    }

    /** Judges a study: one answer for each changed level of its plan. */
    public static List<Answer> ofStudy(StudyView study) {
        return ofStudy(study, Optional.empty());
    }

    /** The noise a plan states, for pooling it into the verdict. */
    public static NoiseAssumption plannedNoise(StudyView study) {
        return study.plan().noise().filter(noise -> noise.runDf().isPresent() || noise.sessionDf().isPresent()).orElseThrow(() -> new Refused(Problem.of(
                "the plan states no noise with degrees of freedom", Place.named("--carry-noise"), "noise that was measured",
                "Give the study or the table it was measured in instead.")));
    }

    /**
     * Judges a study, its noise pooled with that of earlier work.
     *
     * @param pooled the noise to pool in; empty: none
     * @throws Refused if noise is to be pooled into a study that is judged at several looks
     */
    public static List<Answer> ofStudy(StudyView study, Optional<NoiseAssumption> pooled) {
        if (pooled.isPresent()) {
            return pooled(study, pooled.get());
        }
        Plan plan = study.plan();
        List<Question> asked = plan.compare().against().stream().map(against -> question(study, against)).toList();
        if (plan.looks() == 1) {
            return answers(asked, study.observations(), RunOrders.of(plan), plan.seed(), told(study));
        }
        List<Compared> compared = LookedVerdicts.judge(asked, LookSchedule.of(plan, study.sheet()), study.observations(), study.state().settled()::contains,
                RunOrders.of(plan), new SplittableRandom(plan.seed()));
        return compared.stream().map(one -> new Answer(one, told(study))).toList();
    }

    private static List<Answer> pooled(StudyView study, NoiseAssumption noise) {
        Plan plan = study.plan();
        if (plan.looks() > 1) {
            throw new Refused(Problem.of("the plan judges at " + plan.looks() + " looks", Place.named("--carry-noise"), "a plan that judges once",
                    "Leave --carry-noise out."));
        }
        List<Question> asked = plan.compare().against().stream().map(against -> question(study, against).pooledWith(noise)).toList();
        List<String> deviations = new ArrayList<>(told(study));
        if (!plan.noise().equals(Optional.of(noise))) {
            deviations.add("noise from " + noise.from() + " was pooled in at the verdict; the plan did not name it");
        }
        return answers(asked, study.observations(), RunOrders.of(plan), plan.seed(), deviations);
    }

    private static List<Answer> answers(List<Question> asked, List<Observation> trials, RunOrders orders, long seed, List<String> deviations) {
        return Comparisons.judge(asked, trials, orders, new SplittableRandom(seed)).stream().map(compared -> new Answer(compared, deviations)).toList();
    }

    /** What stands beside a verdict: damage to the record, and where the study left its plan. */
    private static List<String> told(StudyView study) {
        List<String> told = new ArrayList<>(study.damages());
        told.addAll(study.deviations());
        return told;
    }

    /** The question of a plan for one changed level. */
    static Question question(StudyView study, String against) {
        Plan plan = study.plan();
        Optional<NoiseAssumption> carried = study.state().noise().map(noise -> new NoiseAssumption(noise.event().runCvPercent(), noise.event().sessionCvPercent(),
                df(noise.event().runDegreesOfFreedom()), df(noise.event().sessionDegreesOfFreedom()), noise.event().from())).or(plan::noise);
        return new Question(plan.compare().factor(), plan.compare().baseline(), against, plan.metric().better(), plan.mattersPercent(), plan.claim(),
                plan.errors().falseAlarm(), Optional.of(study.change()), carried, plan.errors().power());
    }

    private static OptionalDouble df(double degreesOfFreedom) {
        return degreesOfFreedom >= 1 ? OptionalDouble.of(degreesOfFreedom) : OptionalDouble.empty();
    }
}
