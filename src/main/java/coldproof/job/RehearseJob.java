package coldproof.job;

import coldproof.plan.Plan;
import coldproof.plan.RunSheet;
import coldproof.reason.rehearse.LimiterRehearsal;
import coldproof.reason.rehearse.LimiterReport;
import coldproof.reason.rehearse.Rehearsal;
import coldproof.reason.rehearse.RehearsalReport;
import coldproof.reason.rehearse.RehearsalSettings;
import coldproof.reason.rehearse.Workers;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import java.util.stream.IntStream;

/** Rehearses the study before anyone goes to the bench. */
public final class RehearseJob {
    private static final long QUIET_NANOS = 1_000_000_000L; // between two remarks on progress

    private RehearseJob() {}

    /**
     * Rehearses the plan of a study, once for each changed level.
     *
     * @param progress told how far it is, about once a second where it takes that long
     * @throws coldproof.quantity.Refused if the plan says nothing about noise
     */
    public static List<RehearsalReport> ofStudy(StudyView study, RehearsalSettings settings, Consumer<String> progress) {
        return of(study.plan(), study.sheet(), settings, allProcessors(progress));
    }

    /** The same of a plan that is in no folder yet. */
    public static List<RehearsalReport> ofPlan(Plan plan, RehearsalSettings settings, Consumer<String> progress) {
        return of(plan, StudyView.sheet(plan), settings, allProcessors(progress));
    }

    private static List<RehearsalReport> of(Plan plan, RunSheet sheet, RehearsalSettings settings, Workers workers) {
        List<RehearsalReport> reports = new ArrayList<>();
        for (String against : plan.compare().against()) {
            reports.add(Rehearsal.of(plan, sheet, against, settings, workers));
        }
        return reports;
    }

    /**
     * Rehearses the naming of the limiter: the plan run with full telemetry on invented devices.
     *
     * @param progress told how far it is
     */
    public static LimiterReport limiters(StudyView study, RehearsalSettings settings, Consumer<String> progress) {
        return LimiterRehearsal.of(study.plan(), study.sheet(), settings, allProcessors(progress));
    }

    private static Workers allProcessors(Consumer<String> progress) {
        AtomicLong told = new AtomicLong(System.nanoTime());
        AtomicLong stories = new AtomicLong();
        return (pieces, piece) -> {
            long story = stories.incrementAndGet();
            AtomicLong done = new AtomicLong();
            IntStream.range(0, pieces).parallel().forEach(i -> {
                piece.accept(i);
                long share = 100 * done.incrementAndGet() / pieces;
                long before = told.get();
                long now = System.nanoTime();
                if (now - before > QUIET_NANOS && told.compareAndSet(before, now)) {
                    progress.accept("rehearsing story " + story + ": " + share + " %");
                }
            });
        };
    }
}
