package coldproof.report.page;

import java.util.List;

/**
 * A whole report.
 *
 * @param title its title
 * @param subtitle what stands below the title; may be empty
 * @param sections its parts, the answer first
 */
public record Page(String title, String subtitle, List<Section> sections) {
    /** Copies. */
    public Page {
        sections = List.copyOf(sections);
    }
}
