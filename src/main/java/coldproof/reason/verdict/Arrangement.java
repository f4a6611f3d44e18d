package coldproof.reason.verdict;

import coldproof.plan.Change;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * How the trials of a question lie: in sessions, in pairs, in what order. Only trials of the two compared levels count.
 */
final class Arrangement {
    private final Question question;
    private final List<Observation> trials;
    private final SessionOrder sessionOrder;

    Arrangement(Question question, List<Observation> all) {
        this.question = question;
        this.trials = all.stream().filter(trial -> trial.level().equals(question.baseline()) || trial.level().equals(question.against())).toList();
        this.sessionOrder = SessionOrder.of(trials);
    }

    List<Observation> trials() {
        return trials;
    }

    /** Sessions in the order they were run, as far as that is known. */
    Map<String, List<Observation>> sessions() {
        return sessionOrder.sessions();
    }

    boolean hasSessions() {
        return !trials.isEmpty() && trials.stream().noneMatch(trial -> trial.session().isEmpty());
    }

    private boolean hasPairs() {
        return !trials.isEmpty() && trials.stream().noneMatch(trial -> trial.pair().isEmpty());
    }

    /** Whether the place of every trial in the run order is known. */
    boolean hasOrder() {
        return trials.stream().noneMatch(trial -> Double.isNaN(trial.order()));
    }

    /** What the change is tested against: pairs where there are pairs, else as the factor was set, else single trials. */
    Stratum stratum() {
        if (hasPairs()) {
            return Stratum.PAIRS;
        }
        if (trials.isEmpty() && question.change().equals(Optional.of(Change.PER_SESSION))) {
            return Stratum.BETWEEN_SESSIONS; // what it will be tested against is known before the first trial
        }
        if (!hasSessions()) {
            return Stratum.TRIALS;
        }
        if (question.change().isPresent()) {
            return question.change().get() == Change.PER_SESSION ? Stratum.BETWEEN_SESSIONS : Stratum.WITHIN_SESSIONS;
        }
        boolean mixed = sessions().values().stream().anyMatch(session -> levels(session).size() > 1);
        return mixed ? Stratum.WITHIN_SESSIONS : Stratum.BETWEEN_SESSIONS;
    }

    List<Observation> of(String level) {
        return trials.stream().filter(trial -> trial.level().equals(level)).toList();
    }

    /** How many sessions hold trials of the level. */
    int sessionsWith(String level) {
        return (int) sessions().values().stream().filter(session -> levels(session).contains(level)).count();
    }

    /** The pairs that have a trial of each level, baseline first; several trials of a level stand as the last of them with their geometric mean. */
    List<Observation[]> pairs() {
        return new WholePairs(question, trials).pairs();
    }

    /** The trials of pairs that have both levels. */
    List<Observation> inWholePairs() {
        return new WholePairs(question, trials).trials();
    }

    int wholePairs() {
        return pairs().size();
    }

    private static Set<String> levels(List<Observation> session) {
        Set<String> levels = new HashSet<>();
        session.forEach(trial -> levels.add(trial.level()));
        return levels;
    }

    /** Whether it is known in which order the sessions were run. */
    boolean sessionOrderKnown() {
        return sessionOrder.isKnown();
    }

    /** Why these trials cannot carry a verdict however they come out, in a sentence; empty when they can. */
    Optional<String> obstacle(Stratum stratum) {
        for (String level : List.of(question.baseline(), question.against())) {
            if (of(level).isEmpty()) {
                return Optional.of("there is no trial of " + question.factor() + " " + level);
            }
        }
        return switch (stratum) {
            case BETWEEN_SESSIONS -> betweenObstacle();
            case WITHIN_SESSIONS -> withinObstacle();
            case PAIRS, TRIALS -> trialsObstacle();
        };
    }

    private Optional<String> betweenObstacle() {
        List<String> labels = new ArrayList<>();
        for (Map.Entry<String, List<Observation>> session : sessions().entrySet()) {
            if (levels(session.getValue()).size() > 1) {
                return Optional.of("session " + session.getKey() + " holds trials of both levels, but " + question.factor() + " is said to be set once a session");
            }
            labels.add(session.getValue().get(0).level());
        }
        if (sessionOrderKnown() && labels.size() > 2 && separated(labels)) {
            return Optional.of("every session of one level came before every session of the other: a trend over the days cannot be told from the change. "
                    + "Add sessions of the level that came first, after the others");
        }
        return Optional.empty();
    }

    /** The level that has only one session, so that its session cannot be told from its day; empty when there is none. */
    Optional<String> onlySession() {
        return List.of(question.baseline(), question.against()).stream().filter(level -> sessionsWith(level) == 1).findFirst();
    }

    /** Whether a level has only one session. */
    boolean hasSingleSession() {
        return onlySession().isPresent();
    }

    private Optional<String> withinObstacle() {
        List<Map.Entry<String, List<Observation>>> both = sessions().entrySet().stream().filter(session -> levels(session.getValue()).size() > 1).toList();
        if (both.isEmpty()) {
            return Optional.of("no session holds trials of both levels, so the change cannot be told from the session");
        }
        if (!hasOrder()) {
            return Optional.empty();
        }
        int baselineFirst = 0;
        int againstFirst = 0;
        for (Map.Entry<String, List<Observation>> session : both) {
            int direction = direction(session.getValue());
            baselineFirst += direction > 0 ? 1 : 0;
            againstFirst += direction < 0 ? 1 : 0;
        }
        if (baselineFirst == both.size() || againstFirst == both.size()) {
            return Optional.of("in every session all trials of one level came before all of the other: a drift cannot be told from the change. "
                    + "Add sessions that run them the other way round, or mixed");
        }
        return Optional.empty();
    }

    private Optional<String> trialsObstacle() {
        if (hasOrder() && trials.size() > 2 && direction(trials) != 0) {
            return Optional.of("every trial of one level came before every trial of the other: a drift cannot be told from the change. "
                    + "Add trials of the level that came first, after the others");
        }
        return Optional.empty();
    }

    /** 1 when all of the baseline came first, -1 when all of the changed level did, else 0. */
    private int direction(List<Observation> run) {
        double lastBaseline = Double.NEGATIVE_INFINITY;
        double firstBaseline = Double.POSITIVE_INFINITY;
        double lastAgainst = Double.NEGATIVE_INFINITY;
        double firstAgainst = Double.POSITIVE_INFINITY;
        for (Observation trial : run) {
            if (trial.level().equals(question.baseline())) {
                lastBaseline = Math.max(lastBaseline, trial.order());
                firstBaseline = Math.min(firstBaseline, trial.order());
            } else {
                lastAgainst = Math.max(lastAgainst, trial.order());
                firstAgainst = Math.min(firstAgainst, trial.order());
            }
        }
        return lastBaseline < firstAgainst ? 1 : lastAgainst < firstBaseline ? -1 : 0;
    }

    private static boolean separated(List<String> labels) {
        int changes = 0;
        for (int i = 1; i < labels.size(); i++) {
            changes += labels.get(i).equals(labels.get(i - 1)) ? 0 : 1;
        }
        return changes == 1;
    }
}
