package coldproof.reason.limiter;

import static org.junit.jupiter.api.Assertions.assertEquals;

import coldproof.quantity.Interval;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class EffectTest {
    private static Effect effect(double low90, double high90, double low95, double high95) {
        return new Effect((low90 + high90) / 2, 1, 5, Optional.of(new Interval(0.9, low90, high90)), Optional.of(new Interval(0.95, low95, high95)));
    }

    @Test
    void stayedNeedsTheWholeIntervalInsideTheMargin() {
        Cell stays = Cell.stays(Quantity.POWER);
        assertEquals(Prediction.Result.SUPPORTED, stays.test(effect(-0.005, 0.006, -0.008, 0.009)));
        assertEquals(Prediction.Result.UNTESTED, stays.test(effect(-0.02, 0.006, -0.03, 0.009)));
        assertEquals(Prediction.Result.RULED_OUT, stays.test(effect(0.03, 0.05, 0.02, 0.06)));
    }

    @Test
    void movedNeedsTheWholeIntervalOutsideTheMargin() {
        Cell moves = Cell.moves(Quantity.POWER);
        assertEquals(Prediction.Result.SUPPORTED, moves.test(effect(0.03, 0.05, 0.02, 0.06)));
        assertEquals(Prediction.Result.RULED_OUT, moves.test(effect(-0.005, 0.006, -0.008, 0.009)));
        assertEquals(Prediction.Result.UNTESTED, moves.test(effect(-0.02, 0.006, -0.03, 0.009)));
    }

    /** effect(low and high at 90 %, low and high at 95 %): a small sure rise is a rise, none within the margin is none, a wide one is neither. */
    @Test
    void aRiseIsRuledOutByAFallOrByNoChange() {
        Cell rises = Cell.rises(Quantity.CLOCK);
        assertEquals(Prediction.Result.SUPPORTED, rises.test(effect(0.003, 0.008, 0.002, 0.009)));
        assertEquals(Prediction.Result.RULED_OUT, rises.test(effect(-0.004, 0.006, -0.005, 0.007)));
        assertEquals(Prediction.Result.RULED_OUT, rises.test(effect(-0.03, -0.02, -0.04, -0.01)));
        assertEquals(Prediction.Result.UNTESTED, rises.test(effect(-0.02, 0.03, -0.03, 0.04)));
    }

    @Test
    void anEffectWithoutAnIntervalTestsNothing() {
        Effect bare = new Effect(5, Double.NaN, 0, Optional.empty(), Optional.empty());
        assertEquals(Prediction.Result.UNTESTED, Cell.rises(Quantity.CLOCK).test(bare));
    }

    /** Welch's t for 1, 2, 3 against 4, 6, 8: difference 4, error sqrt(1/3 + 4/3), 2.94118 degrees; SciPy 1.17.1 stats.t.ppf(.975, 50 / 17). */
    @Test
    void sessionMeansAreComparedWithUnequalVariances() {
        List<LimiterTrial> before = new ArrayList<>();
        List<LimiterTrial> after = new ArrayList<>();
        for (int i = 1; i <= 3; i++) {
            before.add(new LimiterTrial(Map.of(), "a" + i, i, null, i, LimiterTrial.Loops.NONE));
            after.add(new LimiterTrial(Map.of(), "b" + i, i, null, 2 + 2 * i, LimiterTrial.Loops.NONE));
        }
        Effect effect = Effect.of(before, after, LimiterTrial::logScore);
        assertEquals(4, effect.estimate(), 1e-12);
        assertEquals(2.9411764705882353, effect.degreesOfFreedom(), 1e-12);
        assertEquals(-0.15539950318250373, effect.interval95().orElseThrow().low(), 1e-12);
    }
}
