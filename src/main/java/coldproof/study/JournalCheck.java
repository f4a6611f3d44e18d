package coldproof.study;

import java.util.List;

/**
 * What a look at a journal file found.
 *
 * @param file the file as the person knows it
 * @param entries how many entries can be read
 * @param trials how many trials count
 * @param lastSequence number of the last entry, 0 when there is none
 * @param lastSum checksum of the last entry, which covers all before it; empty when there is none
 * @param flaws everything wrong with the file, in its order; empty when it is sound
 * @param oddities what a careful reader should know though nothing is lost: clocks, zones, gaps, wrong targets
 */
public record JournalCheck(String file, int entries, int trials, long lastSequence, String lastSum, List<JournalFlaw> flaws,
        List<Oddity> oddities) {
    /** Copies the lists. */
    public JournalCheck {
        flaws = List.copyOf(flaws);
        oddities = List.copyOf(oddities);
    }

    /** Whether nothing is wrong with the file. */
    public boolean isSound() {
        return flaws.isEmpty();
    }

    /** How many entries cannot be read. */
    public long entriesLost() {
        return flaws.stream().mapToLong(JournalFlaw::entriesLost).sum();
    }

    /** Numbers of the lines at which something is wrong, ascending, each once. */
    public List<Integer> damagedLines() {
        return flaws.stream().map(JournalFlaw::line).distinct().sorted().toList();
    }
}
