package coldproof.job;

import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.quantity.Refused;
import coldproof.reason.checklist.Ask;
import coldproof.reason.checklist.Checklist;
import coldproof.reason.checklist.StartReadings;
import coldproof.reason.checklist.Step;
import coldproof.reason.safety.Reading;
import coldproof.report.text.ChecklistText;
import coldproof.study.Observed;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * The conditions a recorded trial starts from: as given with the command, else as the sensors of this computer show them. They are read before
 * the workload and written with its score, so that a run that fails leaves nothing.
 */
final class RecordedStart {
    private static final Map<Ask, Reading> GIVEN = Map.of(Ask.BATTERY, Reading.BATTERY, Ask.POWER, Reading.POWER);

    private static final long LOOK_MILLIS = 2000;

    private final BenchStudy study;
    private final Position position;
    private final Map<String, Observed> readings = new LinkedHashMap<>();
    private final boolean wanted;

    private RecordedStart(BenchStudy study, Position position, boolean wanted) {
        this.study = study;
        this.position = position;
        this.wanted = wanted;
    }

    /**
     * Reads what the plan wants read before a trial, unless the checklist has it already.
     *
     * @throws Refused if what was given with the command is no such reading
     */
    static RecordedStart read(BenchStudy study, Position position, StartSensors sensors, List<Taken> given) {
        StudyView view = study.view();
        boolean checked = Checklist.next(view.plan(), view.sheet(), view.state()).kind() == Step.Kind.RUN_TRIAL;
        RecordedStart start = new RecordedStart(study, position, view.plan().start().any() && !checked);
        if (start.wanted) {
            for (Ask ask : BenchReading.startAsks(view.plan())) {
                given(ask, given).or(() -> sensors.shown(ask)).ifPresent(reading -> start.readings.put(BenchReading.name(ask), reading));
            }
        }
        return start;
    }

    /**
     * The same, once the conditions that a sensor shows hold, or the time is over.
     *
     * @param atMostSeconds to wait; 0 reads once
     * @throws InterruptedException if interrupted meanwhile
     */
    static RecordedStart settled(BenchStudy study, Position position, StartSensors sensors, List<Taken> given, double atMostSeconds, Underway underway)
            throws InterruptedException {
        long began = System.nanoTime();
        RecordedStart start = read(study, position, sensors, given);
        double waited = 0;
        while (waited < atMostSeconds && !start.off().isEmpty()) {
            underway.waits(waited, start.off());
            Thread.sleep(LOOK_MILLIS);
            start = read(study, position, sensors, given);
            waited = (System.nanoTime() - began) / 1e9;
        }
        return start;
    }

    /** What was read and does not hold. */
    private List<String> off() {
        return wanted ? StartReadings.off(study.view().plan(), study.view().state(), position, readings) : List.of();
    }

    private static Optional<Observed> given(Ask ask, List<Taken> given) {
        return given.stream().filter(taken -> taken.reading() == GIVEN.get(ask)).findFirst().map(taken -> BenchReading.read(ask, taken.text()));
    }

    /** Writes them, with what is not as planned; says what that is. */
    void write(Consumer<String> remarks) {
        if (wanted) {
            Plan plan = study.view().plan();
            List<String> deviations = StartReadings.deviations(plan, study.view().state(), position, readings);
            study.startConditions(position, readings, deviations);
            ChecklistText.deviations(deviations).forEach(remarks);
        }
    }
}
