package coldproof.job;

import coldproof.machine.Ending;
import coldproof.machine.WorkloadProcess;
import coldproof.machine.sensors.MachineSensors;
import coldproof.plan.Position;
import coldproof.plan.Workload;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.safety.Phase;
import coldproof.study.Source;
import java.io.IOException;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.regex.Pattern;

/** Runs the workload of the next trial, takes its score and records it. */
public final class RecordJob {
    /** The longest a trial may take where the caller does not say. */
    public static final double LONGEST_SECONDS = 24 * 3600;

    private RecordJob() {}

    /**
     * How to run.
     *
     * @param command program and arguments; empty: as the plan says
     * @param scorePattern regular expression with one group; empty: as the plan says, else the wall time is the score
     * @param atMostSeconds a run that takes longer is stopped and not recorded
     * @param settleSeconds how long to wait at most until what sensors show is as the plan wants it before a trial, 0 or more
     * @param underway is told what goes on meanwhile
     */
    public record Request(List<String> command, Optional<String> scorePattern, double atMostSeconds, double settleSeconds, Underway underway) {
        /** Nothing is waited for, and nobody told. */
        public Request(List<String> command, Optional<String> scorePattern, double atMostSeconds) {
            this(command, scorePattern, atMostSeconds, 0, Underway.QUIET);
        }

        /** Copies. */
        public Request {
            command = List.copyOf(command);
        }
    }

    /**
     * A recorded trial.
     *
     * @param position what was run
     * @param score its score
     * @param elapsedSeconds how long it took
     * @param telemetry its log; empty when there is none worth keeping
     */
    public record Recorded(Position position, double score, double elapsedSeconds, Optional<RecordedTelemetry> telemetry) {}

    /**
     * Runs the next trial of an open study.
     *
     * @param pass what the person brings to the safety gate
     * @param remarks takes sentences of the safety gate that hold nothing up
     * @return the trial; empty when none is left
     * @throws Refused if the safety gate stays shut, an abort limit of the plan is broken, or the command cannot be started, fails, takes too long, or its score cannot be found; no
     *     trial is recorded then
     */
    public static Optional<Recorded> next(BenchStudy study, Machine machine, Request request, SafetyGate.Pass pass, Consumer<String> remarks) {
        return next(study, machine, request, pass, remarks, MachineSensors.atHand());
    }

    /** The same with these sensors. */
    static Optional<Recorded> next(BenchStudy study, Machine machine, Request request, SafetyGate.Pass pass, Consumer<String> remarks, MachineSensors sensors) {
        Optional<Position> next = study.view().next();
        if (next.isEmpty()) {
            return Optional.empty();
        }
        Position position = next.get();
        SafetyGate.pass(study, position, Phase.RUNNING, pass, machine.wall().instant()).remarks().forEach(remarks);
        Workload workload = study.view().plan().workload();
        List<String> command = command(request, workload, position, study);
        Optional<Pattern> pattern = request.scorePattern().or(workload::scorePattern).map(ScoreInOutput::pattern);
        RecordedStart start = start(study, position, request, pass, sensors);
        AbortWatch watch = new AbortWatch(study.view().plan().abort(), sensors.live());
        watch.unwatched().forEach(remarks);
        watch.broken().ifPresent(broken -> aborted(study, position, broken, "was not started"));
        study.openSessionOf(position);
        OffsetDateTime started = OffsetDateTime.now(machine.wall());
        TrialTelemetry telemetry = TrialTelemetry.start(sensors, study.view().folder(), position.number(), remarks);
        try (Ending ending = Ending.watched(telemetry::drop)) {
            request.underway().begins(position, command);
            WorkloadProcess.Run run = measured(telemetry, () -> run(command, study.view().folder(), request, watch));
            watch.lost().forEach(remarks);
            if (run.stopped().isPresent()) {
                telemetry.commit();
                String file = telemetry.kept().map(log -> "; its telemetry is in " + log.file()).orElse("");
                aborted(study, position, run.stopped().get(), "was stopped after " + Math.round(run.elapsedSeconds()) + " s" + file);
            }
            double score = score(study, position, pattern, request, run);
            if (ending.begun()) {
                throw interrupted();
            }
            telemetry.commit();
            write(study, position, score, start, remarks, new TrialRun(started, run.elapsedSeconds(), telemetry.kept()));
            study.closeWhenDone(position);
            return Optional.of(new Recorded(position, score, run.elapsedSeconds(), telemetry.kept()));
        } finally {
            telemetry.drop();
        }
    }

    private static RecordedStart start(BenchStudy study, Position position, Request request, SafetyGate.Pass pass, MachineSensors sensors) {
        try {
            return RecordedStart.settled(study, position, StartSensors.of(sensors.live()), pass.taken(), request.settleSeconds(), request.underway());
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new Refused(Problem.of("interrupted while it waited for the start conditions", Place.named("record"), "", "Nothing was recorded for this trial; run record again."));
        } finally {
            request.underway().ends();
        }
    }

    /** When and how long a trial ran, and its log. */
    private record TrialRun(OffsetDateTime started, double elapsedSeconds, Optional<RecordedTelemetry> telemetry) {}

    private static void write(BenchStudy study, Position position, double score, RecordedStart start, Consumer<String> remarks, TrialRun run) {
        try {
            start.write(remarks);
            study.record(position, score, List.of(), run.telemetry.map(RecordedTelemetry::file), run.started, run.elapsedSeconds, Source.RECORDED);
        } catch (Refused notWritten) {
            throw withScore(notWritten, position, score);
        }
    }

    private static WorkloadProcess.Run measured(TrialTelemetry telemetry, Supplier<WorkloadProcess.Run> work) {
        try {
            return work.get();
        } finally {
            telemetry.finish();
        }
    }

    private static double score(BenchStudy study, Position position, Optional<Pattern> pattern, Request request, WorkloadProcess.Run run) {
        if (run.timedOut()) {
            throw refused(position, "the workload took longer than " + Math.round(request.atMostSeconds()) + " s and was stopped" + ScoreInOutput.lastLine(run.output()),
                    "a run that ends", "Nothing was recorded. Run it by hand once, or give it more time: --at-most." + kept(study, position, run));
        }
        if (run.exitCode() != 0) {
            throw refused(position, "the workload ended with status " + run.exitCode() + ScoreInOutput.lastLine(run.output()), "status 0",
                    "Nothing was recorded. Run the command by hand to see what is wrong." + kept(study, position, run));
        }
        String trial = "trial " + position.number();
        return pattern.isPresent() ? ScoreInOutput.score(trial, pattern.get(), run.output(), "Nothing was recorded. Correct the pattern." + kept(study, position, run))
                : run.elapsedSeconds();
    }

    private static String kept(BenchStudy study, Position position, WorkloadProcess.Run run) {
        return KeptOutput.keep(study.view().folder(), String.format(Locale.ROOT, "traces/trial-%03d-output.txt", position.number()), run.output());
    }

    /** A trial may have taken an hour: what it gave is said even when it could not be written. */
    private static Refused withScore(Refused notWritten, Position position, double score) {
        if (!(notWritten.getCause() instanceof IOException)) {
            return notWritten;
        }
        List<Problem> problems = new ArrayList<>(notWritten.problems());
        problems.add(Problem.of("its score was " + score + " and is not recorded", Place.named("trial " + position.number()), "",
                "Note it. Once the study can be written, run: coldproof log --score " + score));
        Refused refused = new Refused(problems);
        refused.initCause(notWritten.getCause());
        return refused;
    }

    private static List<String> command(Request request, Workload workload, Position position, BenchStudy study) {
        String level = position.levels().get(study.view().plan().compare().factor());
        List<String> planned = workload.commandByLevel().getOrDefault(level, workload.command());
        List<String> command = (request.command().isEmpty() ? planned : request.command()).stream().map(word -> withLevels(word, position)).toList();
        if (command.isEmpty()) {
            throw refused(position, "there is no command for " + level, "a command in the plan (`workload: {command: [...]}`) or after --",
                    "Run: coldproof record -- PROGRAM ARGUMENTS");
        }
        return command;
    }

    /** {@code {fan}} in a word becomes the trial's level of the factor fan. */
    private static String withLevels(String word, Position position) {
        String filled = word;
        for (Map.Entry<String, String> level : position.levels().entrySet()) {
            filled = filled.replace("{" + level.getKey() + "}", level.getValue());
        }
        return filled;
    }

    /** Notes an abort in the journal and refuses. */
    private static void aborted(BenchStudy study, Position position, String broken, String what) {
        study.note("trial " + position.number() + " " + what + ": " + broken);
        throw refused(position, broken + "; the workload " + what, "all of the plan's abort limits kept",
                "No trial was recorded, a note was. Put it right before the next run.");
    }

    private static WorkloadProcess.Run run(List<String> command, Path folder, Request request, AbortWatch watch) {
        long began = System.nanoTime();
        try {
            return WorkloadProcess.run(command, folder.toAbsolutePath(), request.atMostSeconds(), () -> {
                Optional<String> broken = watch.broken();
                request.underway().goesOn((System.nanoTime() - began) / 1e9, watch.last().dieCelsius(), watch.last().batteryPercent());
                return broken;
            });
        } catch (IOException failed) {
            throw new Refused(Problem.of("the command cannot be started" + why(failed), Place.named(command.get(0)), "a program that runs here",
                    "Nothing was recorded. Check its name and the PATH; a pipe or a loop takes a shell: record -- sh -c '...'."));
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw interrupted();
        } finally {
            request.underway().ends();
        }
    }

    private static Refused interrupted() {
        return new Refused(Problem.of("interrupted; the workload was stopped", Place.named("record"), "", "Nothing was recorded for this trial; run record again."));
    }

    /** The system's own words at the end of Java's sentence. */
    private static String why(IOException failed) {
        String message = failed.getMessage() == null ? "" : failed.getMessage();
        int last = message.lastIndexOf("error=");
        String words = last < 0 ? message : message.substring(message.indexOf(',', last) + 1);
        return words.isBlank() ? "" : ": " + words.strip();
    }

    private static Refused refused(Position position, String what, String expected, String remedy) {
        return new Refused(Problem.of(what, Place.named("trial " + position.number()), expected, remedy));
    }
}
