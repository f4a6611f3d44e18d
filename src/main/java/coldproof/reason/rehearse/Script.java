package coldproof.reason.rehearse;

import coldproof.plan.Factor;
import coldproof.plan.Layout;
import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.plan.RunSheet;
import coldproof.reason.looks.LookPoint;
import coldproof.reason.looks.LookSchedule;
import coldproof.reason.rehearse.bench.QuickScores;
import coldproof.reason.verdict.ManyLooks;
import coldproof.reason.verdict.Observation;
import coldproof.reason.verdict.Question;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;

/** A plan's trials in their order, ready to be run again and again. Immutable. */
final class Script {
    private static final int STUDIES_PER_PIECE = 250; // fixed, so that pieces are the same on any number of threads
    private final Plan plan;
    private final RunSheet sheet;
    private final Question question;
    private final ManyLooks verdicts;
    private final boolean[] opensSession;
    private final boolean[] outdoors;

    Script(Plan plan, RunSheet sheet, String against) {
        this.plan = plan;
        this.sheet = sheet;
        question = new Question(plan.compare().factor(), plan.compare().baseline(), against, plan.metric().better(), plan.mattersPercent(), plan.claim(),
                plan.errors().falseAlarm(), Optional.of(plan.comparedFactor().change()), plan.noise());
        verdicts = ManyLooks.of(question, plan.compare().against().size(), LookSchedule.of(plan, sheet), observations(), new SplittableRandom(plan.seed()));
        int trials = sheet.positions().size();
        opensSession = new boolean[trials];
        outdoors = new boolean[trials];
        for (int i = 0; i < trials; i++) {
            Position position = sheet.positions().get(i);
            opensSession[i] = i == 0 || position.session() != sheet.positions().get(i - 1).session();
            outdoors[i] = position.levels().values().stream().anyMatch(plan.budget().outdoors()::contains);
        }
    }

    Plan plan() {
        return plan;
    }

    RunSheet sheet() {
        return sheet;
    }

    Question question() {
        return question;
    }

    ManyLooks verdicts() {
        return verdicts;
    }

    /** The trials as the verdict will see them, with a score of 1. */
    List<Observation> observations() {
        List<Factor> others = plan.factors().stream().filter(factor -> factor.levels().size() > 1 && !factor.name().equals(plan.compare().factor())).toList();
        boolean sessions = plan.layout().kind() == Layout.Kind.SESSIONS;
        List<Observation> observations = new ArrayList<>();
        for (Position position : sheet.positions()) {
            List<String> adjust = others.stream().map(factor -> position.levels().get(factor.name())).toList();
            observations.add(new Observation(position.levels().get(plan.compare().factor()), sessions ? Integer.toString(position.session()) : "",
                    position.number(), position.pair() == 0 ? "" : Integer.toString(position.pair()), adjust, 1));
        }
        return observations;
    }

    /** For each trial 0 for the baseline, 1 for the changed level, 2 for any other. */
    int[] levels() {
        int[] levels = new int[sheet.positions().size()];
        for (int i = 0; i < levels.length; i++) {
            String level = sheet.positions().get(i).levels().get(plan.compare().factor());
            levels[i] = level.equals(question.baseline()) ? 0 : level.equals(question.against()) ? 1 : 2;
        }
        return levels;
    }

    /** One study's log scores, better is larger. */
    double[] scores(QuickScores scores, int[] condition, RandomGenerator random) {
        QuickScores.Study study = scores.study(random);
        double[] logs = new double[condition.length];
        for (int i = 0; i < logs.length; i++) {
            if (opensSession[i]) {
                study.beginSession(outdoors[i]);
            }
            logs[i] = study.nextLogScore(condition[i], 0);
        }
        return logs;
    }

    /** Rehearses a story; the same seed gives the same noise to every story and every plan, study by study. */
    Counts rehearse(Told told, RehearsalSettings settings, Workers workers) {
        int pieces = (settings.studies() + STUDIES_PER_PIECE - 1) / STUDIES_PER_PIECE;
        Counts.Tally[] tallies = new Counts.Tally[pieces];
        workers.all(pieces, i -> tallies[i] = piece(told, settings, i * STUDIES_PER_PIECE, Math.min(settings.studies(), (i + 1) * STUDIES_PER_PIECE)));
        Counts.Tally all = new Counts.Tally(verdicts.looks().size());
        for (Counts.Tally tally : tallies) {
            all.add(tally);
        }
        return all.counts();
    }

    private Counts.Tally piece(Told told, RehearsalSettings settings, int from, int end) {
        Counts.Tally tally = new Counts.Tally(verdicts.looks().size());
        for (int study = from; study < end; study++) {
            ManyLooks.Ended ended = verdicts.judge(scores(told.scores(), told.condition(), settings.stream(study)));
            tally.add(ended, told.story().contradicts(ended.decision(), plan.claim(), question.margin()));
        }
        return tally;
    }

    /** What the studies took on average, looks before the end counted in. */
    Spent spent(Counts counts) {
        double trials = 0;
        double minutes = 0;
        double outdoorMinutes = 0;
        List<LookPoint> looks = verdicts.looks();
        for (int look = 0; look < looks.size(); look++) {
            double share = (double) counts.endedAt().get(look) / counts.studies();
            int last = looks.get(look).lastPosition();
            trials += share * last;
            minutes += share * minutes(last, false);
            outdoorMinutes += share * minutes(last, true);
        }
        return new Spent(trials, minutes, outdoorMinutes);
    }

    /** Time until a trial is done, openings included; NaN where the plan gives no time for a trial. */
    private double minutes(int trials, boolean onlyOutdoors) {
        double each = plan.budget().trialSeconds().orElse(Double.NaN);
        String factor = plan.sessionFactor().map(Factor::name).orElse("");
        double seconds = 0;
        for (int i = 0; i < trials; i++) {
            String level = sheet.positions().get(i).levels().getOrDefault(factor, "");
            double one = each + (opensSession[i] ? plan.budget().openingSeconds(level) : 0);
            seconds += !onlyOutdoors || outdoors[i] ? one : 0;
        }
        return seconds / 60;
    }
}
