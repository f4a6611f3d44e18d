package coldproof.stats.randomisation;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Lists of sequences of two levels. */
final class Sequences {
    private Sequences() {}

    static int indexOf(List<boolean[]> sequences, boolean[] wanted) {
        for (int i = 0; i < sequences.size(); i++) {
            if (Arrays.equals(sequences.get(i), wanted)) {
                return i;
            }
        }
        return -1;
    }

    static int countTrue(boolean[] flags) {
        int count = 0;
        for (boolean flag : flags) {
            count += flag ? 1 : 0;
        }
        return count;
    }

    static void requireDistinct(List<boolean[]> sequences) {
        if (sequences.isEmpty()) {
            throw new IllegalArgumentException("a session has no allowed sequence");
        }
        Set<String> seen = new HashSet<>();
        for (boolean[] sequence : sequences) {
            int against = countTrue(sequence);
            if (against == 0 || against == sequence.length) {
                throw new IllegalArgumentException("the sequence " + Arrays.toString(sequence) + " lacks a level");
            }
            if (!seen.add(Arrays.toString(sequence))) {
                throw new IllegalArgumentException("the sequence " + Arrays.toString(sequence) + " is listed twice");
            }
        }
    }
}
