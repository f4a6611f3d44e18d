package coldproof.study;

import java.util.ArrayList;
import java.util.List;

/**
 * A trial that counts, with its corrections applied.
 *
 * @param sequence the entry that recorded it
 * @param recorded the trial as first recorded, its score included
 * @param score the score that counts: the last correction, else the one recorded
 * @param corrections entries that corrected the score, oldest first, empty for most trials
 */
public record Trial(long sequence, TrialRecorded recorded, double score, List<Long> corrections) {
    /** Copies the list. */
    public Trial {
        corrections = List.copyOf(corrections);
    }

    /** Place in the run sheet, first is 1. */
    public int position() {
        return recorded.position();
    }

    Trial corrected(long correction, double rightScore) {
        List<Long> all = new ArrayList<>(corrections);
        all.add(correction);
        return new Trial(sequence, recorded, rightScore, all);
    }
}
