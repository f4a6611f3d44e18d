package coldproof.reason.verdict;

import coldproof.plan.Better;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** The change as it came out, where nothing tells how far it can be trusted. */
final class BareChange {
    private final Question question;
    private final Better better;

    private BareChange(Question question) {
        this.question = question;
        this.better = question.better();
    }

    /**
     * The difference of log scores, better is positive: of trials, or the mean of that of pairs or of sessions that hold both levels, or of session means.
     *
     * @return empty where a level has no trial, or the change lies together with the session or with what is adjusted for
     */
    static OptionalDouble of(Question question, Arrangement arrangement, Stratum stratum) {
        BareChange change = new BareChange(question);
        List<Observation> trials = arrangement.trials();
        if (arrangement.of(question.baseline()).isEmpty() || arrangement.of(question.against()).isEmpty()
                || trials.stream().anyMatch(trial -> !trial.covariates().isEmpty() || !trial.adjust().equals(trials.get(0).adjust()) && stratum != Stratum.BETWEEN_SESSIONS)) {
            return OptionalDouble.empty();
        }
        return switch (stratum) {
            case TRIALS -> OptionalDouble.of(change.difference(trials));
            case PAIRS -> change.mean(arrangement.pairs().stream().map(List::of).toList());
            case WITHIN_SESSIONS -> change.mean(arrangement.sessions().values().stream().filter(change::holdsBoth).toList());
            case BETWEEN_SESSIONS -> change.betweenSessions(arrangement);
        };
    }

    private OptionalDouble mean(List<List<Observation>> units) {
        return units.stream().mapToDouble(this::difference).average();
    }

    private double difference(List<Observation> trials) {
        Map<Boolean, Double> means = trials.stream().collect(Collectors.partitioningBy(this::isAgainst, Collectors.averagingDouble(trial -> LogScores.of(trial, better))));
        return means.get(true) - means.get(false);
    }

    private boolean holdsBoth(List<Observation> trials) {
        return trials.stream().map(this::isAgainst).distinct().count() == 2;
    }

    private boolean isAgainst(Observation trial) {
        return trial.level().equals(question.against());
    }

    private OptionalDouble betweenSessions(Arrangement arrangement) {
        boolean mixed = arrangement.sessions().values().stream().anyMatch(this::holdsBoth);
        Analyst analyst = new Analyst(question, arrangement);
        return mixed ? OptionalDouble.empty() : analyst.differenceOfSessions();
    }
}
