package coldproof.study;

import java.util.ArrayList;
import java.util.List;

/**
 * The state of a study that is being recorded: the same as {@link StudyState#fold} of all its entries, but each new entry costs only itself.
 * An entry that changes what earlier ones mean (an undo) has all of them gone through again.
 */
public final class StudyFold {
    private Folding folding;
    private List<Entry> entries;

    /** Starts with these entries, in the order of their sequence. */
    public StudyFold(List<Entry> entries) {
        this.entries = new ArrayList<>(entries);
        folding = new Folding(this.entries);
    }

    /** Goes on with the entry that follows. */
    public void add(Entry entry) {
        if (folding.leavesBefore(entry)) {
            folding.goOn(entry);
            return;
        }
        entries = new ArrayList<>(entries);
        entries.add(entry);
        folding = new Folding(entries);
    }

    /** The state now. */
    public StudyState state() {
        return folding.state();
    }
}
