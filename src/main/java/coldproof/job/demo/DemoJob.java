package coldproof.job.demo;

import coldproof.job.BenchStudy;
import coldproof.job.Machine;
import coldproof.job.PlanJob;
import coldproof.job.ReadyPlans;
import coldproof.job.SafetyGate;
import coldproof.job.StudyView;
import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.rehearse.bench.Bench;
import coldproof.reason.rehearse.bench.BenchCondition;
import coldproof.reason.rehearse.bench.BenchParameters;
import coldproof.reason.rehearse.bench.BenchSession;
import coldproof.reason.rehearse.bench.BenchTrace.Channel;
import coldproof.reason.rehearse.bench.BenchTrial;
import coldproof.reason.rehearse.bench.InventedDevices;
import coldproof.reason.safety.Phase;
import coldproof.study.Observed;
import coldproof.study.Source;
import coldproof.study.StudySimulated;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;

/** Makes the study of the demonstration: plan, frozen, every trial simulated with its trace. */
public final class DemoJob {
    private static final String PLAN = "chilled-air";
    private static final BenchParameters DEVICE = InventedDevices.trailLaptop();
    private static final String FOLDER = "coldproof-demo";
    private static final int MOST_FOLDERS = 1000;
    /** Two sessions a day, morning and afternoon, in the invented winter of the plan's seed. */
    private static final ZonedDateTime START = ZonedDateTime.of(2026, 1, 14, 9, 0, 0, 0, ZoneId.of("UTC+01:00"));
    private static final String MARK = "the workshop at Tarn Hollow and its trail laptop are invented; every score and trace was computed";

    private DemoJob() {}

    /**
     * Makes the study.
     *
     * @param wanted the folder, which must be new or empty; none: {@code coldproof-demo} here, with a number where that is taken, or under the
     *     folder for temporary files where this one cannot be written to
     * @return the study folder
     * @throws Refused if the folder is taken or cannot be written to
     */
    public static Path make(Optional<Path> wanted) {
        Path folder = wanted.isPresent() ? empty(wanted.get()) : free(Path.of("").toAbsolutePath());
        SimulatedTime time = new SimulatedTime(START);
        PlanJob.create(folder, ReadyPlans.text(PLAN));
        long seed = StudyView.read(folder).plan().seed();
        Machine machine = time.machine(seed);
        PlanJob.freeze(folder, machine, Optional.empty());
        try (BenchStudy study = BenchStudy.open(folder, machine)) {
            study.append(new StudySimulated(MARK));
            run(study, time, seed);
        }
        return folder;
    }

    private static void run(BenchStudy study, SimulatedTime time, long seed) {
        Plan plan = study.view().plan();
        coldproof.reason.rehearse.bench.BenchStudy bench = Bench.of(DEVICE).study(new SplittableRandom(seed));
        for (int session = 1; session <= study.view().sheet().sessions(); session++) {
            List<Position> positions = study.view().sheet().ofSession(session);
            time.passUntil(session % 2 == 1 ? 9 : 14, 0);
            BenchCondition first = DemoBench.condition(plan, positions.get(0), DEVICE);
            BenchSession sitting = bench.session(first);
            rest(sitting, first, time, plan.budget().soakSeconds());
            SafetyGate.pass(study, positions.get(0), Phase.RUNNING, DemoBench.measured(first), time.instant());
            for (Position position : positions) {
                trial(study, sitting, DemoBench.condition(plan, position, DEVICE), position, time);
                rest(sitting, first, time, 2 * 60);
            }
        }
    }

    private static void rest(BenchSession sitting, BenchCondition condition, SimulatedTime time, double seconds) {
        sitting.rest(condition, seconds);
        time.passSeconds(seconds);
    }

    private static void trial(BenchStudy study, BenchSession sitting, BenchCondition condition, Position position, SimulatedTime time) {
        OffsetDateTime started = OffsetDateTime.now(time);
        BenchTrial trial = sitting.run(condition);
        study.startConditions(position, readings(trial, study.view().plan()), List.of());
        String trace = String.format(Locale.ROOT, "traces/trial-%03d.csv", position.number());
        write(study.view().folder().resolve(trace), TraceText.of(trial.trace()));
        double elapsed = trial.trace().values(Channel.SECONDS)[trial.trace().size() - 1];
        time.passSeconds(elapsed);
        List<Double> loops = Arrays.stream(trial.loopRates()).map(DemoJob::written).boxed().toList();
        study.record(position, written(trial.score()), loops, Optional.of(trace), started, trial.workSeconds(), Source.SIMULATED);
        study.closeWhenDone(position);
    }

    /** A score as a screen would show it, to the hundredth. */
    private static double written(double score) {
        return Math.rint(score * 100) / 100;
    }

    private static Map<String, Observed> readings(BenchTrial trial, Plan plan) {
        Map<String, Observed> readings = new LinkedHashMap<>();
        readings.put("die temperature", Observed.of(first(trial, Channel.DIE_CELSIUS), "°C"));
        readings.put("air", Observed.of(first(trial, Channel.AIR_CELSIUS), "°C"));
        readings.put("battery", Observed.of(first(trial, Channel.BATTERY_PERCENT), "%"));
        plan.start().powerSource().ifPresent(source -> readings.put("power source", Observed.of(source)));
        return readings;
    }

    private static double first(BenchTrial trial, Channel channel) {
        return Arrays.stream(trial.trace().values(channel)).filter(Double::isFinite).map(value -> Math.rint(value * 10) / 10).findFirst().orElseThrow();
    }

    private static void write(Path file, String text) {
        try {
            Files.createDirectories(file.getParent());
            Files.writeString(file, text, StandardCharsets.UTF_8);
        } catch (IOException failed) {
            throw refused("the trace cannot be written: " + failed.getMessage(), file);
        }
    }

    private static Path empty(Path folder) {
        if (Files.exists(folder) && !isEmpty(folder)) {
            throw refused("there is something in this folder already", folder);
        }
        return folder.toAbsolutePath();
    }

    private static boolean isEmpty(Path folder) {
        try (var inside = Files.list(folder)) {
            return inside.findAny().isEmpty();
        } catch (NotDirectoryException file) {
            return false;
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    private static Path free(Path here) {
        Path parent = Files.isWritable(here) ? here : Path.of(System.getProperty("java.io.tmpdir"));
        for (int number = 1; number <= MOST_FOLDERS; number++) {
            Path folder = parent.resolve(number == 1 ? FOLDER : FOLDER + "-" + number);
            if (!Files.exists(folder)) {
                return folder;
            }
        }
        throw refused("there are " + MOST_FOLDERS + " demonstrations here already", parent);
    }

    private static Refused refused(String what, Path place) {
        return new Refused(Problem.of(what, Place.named(place.toString()), "a new or empty folder that can be written to",
                "Name another: coldproof demo FOLDER"));
    }
}
