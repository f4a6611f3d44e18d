package coldproof.trace;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class ThermalFitTest {
    private static Blocks blocks(DoubleUnaryOperator die, DoubleUnaryOperator watts) {
        Map<Channel, double[]> channels = new EnumMap<>(Channel.class);
        double[] dies = new double[150];
        double[] powers = new double[150];
        for (int i = 0; i < 150; i++) {
            dies[i] = die.applyAsDouble(2 * i + 1);
            powers[i] = watts.applyAsDouble(2 * i + 1);
        }
        channels.put(Channel.DIE_TEMPERATURE, dies);
        channels.put(Channel.PACKAGE_POWER, powers);
        return new Blocks(2, 150, channels);
    }

    @Test
    void theTimeConstantOfACleanApproachIsFound() {
        ThermalFit fit = ThermalFit.of(blocks(t -> 80 - 20 * Math.exp(-t / 70), t -> 28), new Boost(0, 28), Channel.PACKAGE_POWER);
        assertEquals(70, fit.timeConstantSeconds(), 1e-6);
        assertEquals(80, fit.asymptoteCelsius(), 1e-6);
    }

    @Test
    void aDieThatFollowsPowerOrStandsStillShowsNone() {
        assertTrue(Double.isNaN(ThermalFit.of(blocks(t -> 80 - 20 * Math.exp(-t / 70), t -> 28 + 5 * Math.exp(-t / 70)), new Boost(0, 28), Channel.PACKAGE_POWER)
                .timeConstantSeconds()));
        assertTrue(Double.isNaN(ThermalFit.of(blocks(t -> 95, t -> 28), new Boost(0, 28), Channel.PACKAGE_POWER).timeConstantSeconds()));
    }

    @Test
    void aStepOfPowerIsFoundAndWanderingIsNot() {
        assertEquals(List.of(100.0), Changes.of(blocks(t -> 80, t -> (t < 100 ? 42 : 28) + 0.1 * Math.sin(t)), Channel.PACKAGE_POWER));
        assertEquals(List.of(), Changes.of(blocks(t -> 80, t -> 28 + 0.3 * Math.sin(t / 12)), Channel.PACKAGE_POWER));
    }
}
