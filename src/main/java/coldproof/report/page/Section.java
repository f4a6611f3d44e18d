package coldproof.report.page;

import java.util.List;

/**
 * A part of a page under its heading.
 *
 * @param id a plain name, unique in the page
 * @param heading its heading
 * @param blocks what stands in it
 */
public record Section(String id, String heading, List<Block> blocks) {
    /** Copies. */
    public Section {
        blocks = List.copyOf(blocks);
    }
}
