package coldproof.reason.rehearse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import coldproof.reason.rehearse.bench.Bench;
import coldproof.reason.rehearse.bench.BenchCondition;
import coldproof.reason.rehearse.bench.BenchParameters;
import coldproof.reason.rehearse.bench.BenchSession;
import coldproof.reason.rehearse.bench.BenchSketch;
import coldproof.reason.rehearse.bench.BenchTruth;
import coldproof.reason.rehearse.bench.HeldBy;
import coldproof.reason.rehearse.bench.InventedDevices;
import coldproof.trace.TraceSummary;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The simulator as its own witness: a bench fitted to its traces must do again what they showed. */
class BenchFitTest {
    private static final BenchCondition ROOM = BenchCondition.room(21);

    static List<BenchParameters> devices() {
        return List.of(InventedDevices.trailLaptop(), InventedDevices.workshopLaptop(), InventedDevices.shelfDesktop(), InventedDevices.steadyBox());
    }

    private static List<TraceSummary> pilot(BenchParameters device) {
        BenchSession session = Bench.of(device).study(new SplittableRandom(5)).session(ROOM);
        List<TraceSummary> traces = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            traces.add(BenchTraces.summary(session.run(ROOM).trace()));
            session.rest(ROOM, 300);
        }
        return traces;
    }

    @ParameterizedTest
    @MethodSource("devices")
    void theFittedBenchSustainsWhatTheTracesShowed(BenchParameters device) {
        BenchSketch sketch = BenchFit.of(device.name(), pilot(device));
        BenchTruth fitted = Bench.of(sketch.parameters()).truth(ROOM);
        BenchTruth true1 = Bench.of(device).truth(ROOM);
        assertEquals(true1.sustainedWatts(), fitted.sustainedWatts(), 0.05 * true1.sustainedWatts(), sketch.facts().toString());
        assertEquals(true1.sustainedMegahertz(), fitted.sustainedMegahertz(), 0.05 * true1.sustainedMegahertz(), sketch.facts().toString());
        assertEquals(true1.sustainedDieCelsius(), fitted.sustainedDieCelsius(), 6, sketch.facts().toString());
        HeldBy holder = true1.limiter().orElseThrow();
        assertEquals(holder, fitted.limiter().orElseThrow(), sketch.facts().toString());
    }

    @Test
    void noTraceNoBench() {
        assertThrows(IllegalArgumentException.class, () -> BenchFit.of("none", List.of()));
    }
}
