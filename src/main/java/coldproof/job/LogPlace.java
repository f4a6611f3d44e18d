package coldproof.job;

import coldproof.plan.Position;
import coldproof.reason.checklist.Ask;
import coldproof.reason.checklist.Checklist;
import coldproof.reason.checklist.Meters;
import coldproof.reason.checklist.ScoreText;
import coldproof.reason.checklist.Step;
import coldproof.reason.safety.OutdoorBudget;
import coldproof.report.text.FieldCardText;
import coldproof.study.Observed;
import java.time.OffsetDateTime;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Where the checklist stands: the step at hand, the questions it takes, and what was read for it so far. */
final class LogPlace {
    private final BenchStudy study;
    private final Machine machine;
    private final LogSafety safety;
    private final Offers offers;
    private final Map<String, Observed> readings = new LinkedHashMap<>();
    private final Deque<Ask> asks = new ArrayDeque<>();
    private Optional<OutdoorBudget.Limit> stay = Optional.empty();
    private Step step;
    private boolean away;
    private Optional<ScoreText> doubted = Optional.empty();
    private OffsetDateTime startedAt;
    private long startedNanos;

    LogPlace(BenchStudy study, Machine machine) {
        this.study = study;
        this.machine = machine;
        this.safety = new LogSafety(study, machine);
        this.offers = new Offers(machine, study);
        this.away = study.isAway(machine);
        begin();
    }

    StudyView view() {
        return study.view();
    }

    /** What is to be done now. */
    Step step() {
        return step;
    }

    /** What is asked for it, the next question first. */
    Deque<Ask> asks() {
        return asks;
    }

    /** What was read for it so far, by name. */
    Map<String, Observed> readings() {
        return readings;
    }

    LogSafety safety() {
        return safety;
    }

    Offers offers() {
        return offers;
    }

    /** What limits the stay outdoors. */
    Optional<OutdoorBudget.Limit> stay() {
        return stay;
    }

    /** The score that is to be confirmed, if one is. */
    Optional<ScoreText> doubted() {
        return doubted;
    }

    void doubt(Optional<ScoreText> score) {
        doubted = score;
    }

    /** Whoever was away without a word has said that the work goes on. */
    void isBack() {
        away = false;
    }

    /** When the step was first shown. */
    OffsetDateTime startedAt() {
        return startedAt;
    }

    /** Time since the step at hand was first shown, s. */
    double stepSeconds() {
        return Math.max(0, (machine.monotonicNanos().getAsLong() - startedNanos) / 1e9);
    }

    /** Finds the next step and the questions it takes. */
    void begin() {
        step = Checklist.next(view().plan(), view().sheet(), view().state());
        if (away && view().state().openSession().isPresent() && step.kind() != Step.Kind.CLOSE_SESSION) {
            step = new Step(Step.Kind.RESUME, step.session(), step.position());
        }
        readings.clear();
        offers.forget();
        asks.clear();
        doubted = Optional.empty();
        startedAt = OffsetDateTime.now(machine.wall());
        startedNanos = machine.monotonicNanos().getAsLong();
        switch (step.kind()) {
            case RESUME -> asks.add(Ask.RESUME);
            case OPEN_SESSION -> askOpening(step.position().orElseThrow());
            case SOAK -> asks.add(Ask.SOAK);
            case START_CONDITIONS -> asks.addAll(BenchReading.startAsks(view().plan()));
            case RUN_TRIAL -> asks.add(Ask.SCORE);
            case CLOSE_SESSION -> asks.add(Ask.CLOSE_SESSION);
            case FINISHED -> asks.add(Ask.FINISHED);
        }
        if (step.kind() == Step.Kind.SOAK || step.kind() == Step.Kind.START_CONDITIONS || step.kind() == Step.Kind.RUN_TRIAL) {
            safety.at(view().next().orElseThrow());
            stay = isOutdoors(view().next().orElseThrow()) ? safety.stay() : Optional.empty();
            askSafety();
        }
    }

    void askSafety() {
        if (safety.shut()) {
            asks.push(Ask.SAFETY);
        }
    }

    private void askOpening(Position position) {
        if (BenchReading.plannedAir(view().plan(), position).isPresent()) {
            asks.add(Ask.AIR);
        }
        boolean outdoors = isOutdoors(position);
        boolean cameIn = !outdoors && view().state().sessions().stream().reduce((first, second) -> second)
                .filter(session -> Meters.isOutdoors(view().plan(), session.levels())).isPresent();
        if (outdoors || cameIn) {
            asks.add(Ask.HUMIDITY);
        }
        if (outdoors) {
            asks.addAll(List.of(Ask.WIND, Ask.PRECIPITATION));
        }
        if (cameIn) {
            asks.add(Ask.DEVICE);
        }
        asks.add(Ask.OPEN_SESSION);
    }

    private boolean isOutdoors(Position position) {
        return Meters.isOutdoors(view().plan(), study.sessionLevels(position));
    }

    /** How to come in from the open session, as far as it was out in the cold or the open air. */
    List<String> comingIn() {
        return view().state().openSession().flatMap(open -> safety.comingIn(open.number(), Meters.isOutdoors(view().plan(), open.levels())))
                .map(FieldCardText::comingIn).orElse(List.of());
    }
}
