package coldproof.job;

import coldproof.plan.Better;
import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.checklist.Question;
import coldproof.reason.rehearse.PlannedConditions;
import coldproof.reason.rehearse.bench.Bench;
import coldproof.reason.rehearse.bench.BenchCondition;
import coldproof.reason.rehearse.bench.BenchParameters;
import coldproof.reason.rehearse.bench.BenchSession;
import coldproof.reason.rehearse.bench.BenchTrace;
import coldproof.reason.rehearse.bench.BenchTrial;
import coldproof.reason.rehearse.bench.InventedDevices;
import coldproof.study.StudySimulated;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * Practice for the person: the checklist of a study's plan against a simulated bench that says what the instruments would show. It is kept in
 * a folder of its own whose journal says that everything in it is simulated; the study itself is only read.
 */
public final class DryRun {
    private static final String MARK = "a dry run of the checklist; what the instruments showed was computed";
    private static final String SUFFIX = "-dry-run";
    private static final int MOST_FOLDERS = 1000;
    private static final double WORK = 100; // baseline seconds or so of a lower-is-better score

    private static final double COOLING_SECONDS = 15 * 60; // between trials, so that start conditions can be met

    private final Plan plan;
    private final BenchParameters device;
    private final coldproof.reason.rehearse.bench.BenchStudy bench;
    private BenchSession sitting;
    private BenchCondition opened;
    private int session;
    private int shown;
    private BenchTrial trial;
    private double baselineRate;

    private DryRun(Plan plan, BenchParameters device) {
        this.plan = plan;
        this.device = device;
        bench = Bench.of(device).study(new SplittableRandom(plan.seed()));
    }

    /**
     * Lays out the folder of a dry run: the study's plan, frozen, and a journal marked as simulated. A dry run begun before goes on.
     *
     * @param study the study to practise for; nothing in it is changed
     * @param wanted the folder; none: beside the study, its name with {@code -dry-run}
     * @return the folder
     * @throws Refused if the folder holds something else, or cannot be written to
     */
    public static Path folder(Path study, Optional<Path> wanted, Machine machine) {
        Path folder = wanted.map(Path::toAbsolutePath).orElseGet(() -> beside(study.toAbsolutePath().normalize()));
        if (folder.normalize().equals(study.toAbsolutePath().normalize())) {
            throw refused("this is the study itself", folder, "Name another folder: simulated trials are never mixed with real ones.");
        }
        if (isDryRun(folder)) {
            return folder;
        }
        if (Files.exists(folder) && !isEmpty(folder)) {
            throw refused("there is something in this folder already, and it is no dry run", folder, "Name another: coldproof log --rehearse FOLDER");
        }
        PlanJob.create(folder, PlanJob.text(StudyView.read(study).plan()));
        PlanJob.freeze(folder, machine, Optional.empty());
        try (BenchStudy made = BenchStudy.open(folder, machine)) {
            made.append(new StudySimulated(MARK));
        }
        return folder;
    }

    private static Path beside(Path study) {
        Path parent = study.getParent() == null ? study : study.getParent();
        String name = (study.getFileName() == null ? "study" : study.getFileName().toString()) + SUFFIX;
        for (int number = 1; number <= MOST_FOLDERS; number++) {
            Path folder = parent.resolve(number == 1 ? name : name + "-" + number);
            if (!Files.exists(folder) || isDryRun(folder)) {
                return folder;
            }
        }
        throw refused("there are " + MOST_FOLDERS + " such folders already", parent, "Name another: coldproof log --rehearse FOLDER");
    }

    private static boolean isDryRun(Path folder) {
        return Files.isRegularFile(folder.resolve(PlanFile.NAME)) && StudyView.read(folder).state().simulated().filter(MARK::equals).isPresent();
    }

    private static boolean isEmpty(Path folder) {
        try (var inside = Files.list(folder)) {
            return inside.findAny().isEmpty();
        } catch (IOException unreadable) {
            throw refused("the folder cannot be read: " + unreadable.getMessage(), folder, "Name another: coldproof log --rehearse FOLDER");
        }
    }

    private static Refused refused(String what, Path place, String remedy) {
        return new Refused(Problem.of(what, Place.named(place.toString()), "a new or empty folder, or that of a dry run", remedy));
    }

    /** The instruments for a checklist: those of the study's own bench where it has one, else of an invented laptop. */
    public static DryRun instruments(Path study, Plan plan) {
        return new DryRun(plan, BenchFile.of(study).map(file -> file.sketch().parameters()).orElse(InventedDevices.trailLaptop()));
    }

    /** What the instruments show for a question; nothing where they have nothing to say. */
    public List<String> show(Question question) {
        Optional<Position> at = question.step().position();
        if (at.isEmpty()) {
            return List.of();
        }
        Position position = at.get();
        return switch (question.ask()) {
            case AIR -> said("the thermometer reads " + one(condition(position).airCelsius()) + " °C");
            case WIND -> said("the anemometer reads 1 m/s");
            case SOAK -> said("at the bench you would wait now; type the time it took, such as " + Math.round(plan.budget().soakSeconds() / 60) + " min");
            case DIE -> said("the die reads " + one(first(of(position), BenchTrace.Channel.DIE_CELSIUS)) + " °C");
            case BATTERY -> said("the battery reads " + Math.round(first(of(position), BenchTrace.Channel.BATTERY_PERCENT)) + " %");
            case SCORE -> said("the run has ended; its " + plan.metric().name() + " is " + score(of(position)) + " " + plan.metric().unit());
            default -> List.of();
        };
    }

    private static List<String> said(String text) {
        return List.of("SIMULATED: " + text.strip());
    }

    private BenchCondition condition(Position position) {
        return PlannedConditions.of(plan, position.levels(), device);
    }

    /** The trial of a position, run when the first instrument is read; run anew where a position comes up again. */
    private BenchTrial of(Position position) {
        if (shown == position.number()) {
            return trial;
        }
        BenchCondition condition = condition(position);
        if (sitting == null || session != position.session() || opened.pasteScale() != condition.pasteScale()) {
            sitting = bench.session(condition);
            opened = condition;
            session = position.session();
            sitting.rest(condition, plan.budget().soakSeconds());
        } else {
            sitting.rest(condition, COOLING_SECONDS);
        }
        trial = sitting.run(condition);
        shown = position.number();
        baselineRate = baselineRate == 0 ? trial.score() : baselineRate;
        return trial;
    }

    private static double first(BenchTrial trial, BenchTrace.Channel channel) {
        return Arrays.stream(trial.trace().values(channel)).filter(Double::isFinite).findFirst().orElse(0);
    }

    private String score(BenchTrial of) {
        double score = plan.metric().better() == Better.HIGHER ? of.score() : of.elapsedSeconds(WORK * baselineRate);
        return String.format(Locale.ROOT, "%.2f", score);
    }

    private static String one(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
