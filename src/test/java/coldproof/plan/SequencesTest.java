package coldproof.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SequencesTest {
    /** Counting by sums gives what going through every order gives. */
    @ParameterizedTest
    @CsvSource({"1, 1", "1, 2", "2, 1", "2, 2", "1, 5", "3, 2", "3, 3", "4, 3", "4, 4", "5, 5", "2, 7", "6, 4", "7, 7"})
    void countsEveryAllowedOrder(int baseline, int against) {
        for (Order order : Order.values()) {
            Map<String, Integer> counts = new LinkedHashMap<>();
            counts.put("room", baseline);
            counts.put("chilled", against);
            Sequences sequences = new Sequences(counts, order);
            int length = baseline + against;
            int allowed = 0;
            for (int bits = 0; bits < 1 << length; bits++) {
                int[] places = new int[length];
                for (int i = 0; i < length; i++) {
                    places[i] = bits >> i & 1;
                }
                allowed += Integer.bitCount(bits) == against && sequences.allows(places) ? 1 : 0;
            }
            assertEquals(allowed, sequences.countOfTwo(), baseline + " and " + against + ", " + order);
        }
    }
}
