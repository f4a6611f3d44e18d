package coldproof.job;

import coldproof.plan.Position;
import coldproof.study.Observed;
import coldproof.study.Source;
import coldproof.study.StudySimulated;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.ToDoubleFunction;

/** Studies for tests, made through the same jobs as a person's, on a clock that stands still and marks that count. */
final class BenchFixture {
    private static final Instant NOON = Instant.parse("2026-01-14T12:00:00Z");

    private BenchFixture() {}

    /** A machine that gives the same bytes each time. */
    static Machine machine(Path folder) {
        AtomicLong marks = new AtomicLong();
        return new Machine(Clock.fixed(NOON, ZoneOffset.UTC), () -> 0L, () -> "mark-" + marks.incrementAndGet(), folder);
    }

    /** Writes a plan, freezes it, and records every trial of its run sheet with the score given. */
    static Path study(Path folder, String plan, ToDoubleFunction<Position> score) throws IOException {
        return study(folder, plan, score, Optional.empty());
    }

    /** The same with one trace for each trial. */
    static Path study(Path folder, String plan, ToDoubleFunction<Position> score, Optional<String> trace) throws IOException {
        PlanJob.create(folder, plan);
        PlanJob.freeze(folder, machine(folder), Optional.empty());
        try (BenchStudy study = BenchStudy.open(folder, machine(folder))) {
            study.append(new StudySimulated("computed for a test"));
            for (Position position : study.view().sheet().positions()) {
                study.startConditions(position, Map.of("air", Observed.of(21, "°C")), List.of());
                Optional<String> file = trace.map(text -> "traces/trial-" + position.number() + ".csv");
                if (file.isPresent()) {
                    Files.createDirectories(folder.resolve("traces"));
                    Files.writeString(folder.resolve(file.get()), trace.get(), StandardCharsets.UTF_8);
                }
                study.record(position, score.applyAsDouble(position), List.of(), file, OffsetDateTime.ofInstant(NOON, ZoneOffset.UTC), 60, Source.SIMULATED);
            }
        }
        return folder;
    }

    /** A score with a gain of {@code percent} for one level, and scatter of about a percent that depends on the place alone. */
    static ToDoubleFunction<Position> gain(String factor, String level, double percent) {
        return position -> 40 * (position.levels().get(factor).equals(level) ? 1 + percent / 100 : 1) * (1 + 0.01 * Math.sin(7.3 * position.number()));
    }
}
