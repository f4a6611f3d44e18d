package coldproof.trace;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class BlocksTest {
    /** Oracle: the same weighted mean over every block, those outside the stretch with weight 0. */
    @Test
    void aMeanOfAStretchIsThatOfTheBlocksItTouches() {
        SplittableRandom random = new SplittableRandom(5);
        double[] watts = random.doubles(90, 10, 40).toArray();
        watts[7] = Double.NaN;
        Blocks blocks = new Blocks(2.3, watts.length, Map.of(Channel.PACKAGE_POWER, watts));
        for (int i = 0; i < 5000; i++) {
            double from = random.nextInt(4) == 0 ? 2.3 * random.nextInt(95) : random.nextDouble(-20, 230);
            double to = random.nextInt(4) == 0 ? 2.3 * random.nextInt(95) : from + random.nextDouble(-5, 60);
            double sum = 0;
            double weight = 0;
            for (int block = 0; block < watts.length; block++) {
                double overlap = Math.min(to, (block + 1) * 2.3) - Math.max(from, block * 2.3);
                sum += overlap > 0 && block != 7 ? overlap * watts[block] : 0;
                weight += overlap > 0 && block != 7 ? overlap : 0;
            }
            assertEquals(weight == 0 ? Double.NaN : sum / weight, blocks.mean(Channel.PACKAGE_POWER, from, to), 0, from + " to " + to);
        }
    }
}
