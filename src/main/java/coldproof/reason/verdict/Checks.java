package coldproof.reason.verdict;

import java.util.List;

/** Looks at whether the data are what the method assumes. */
final class Checks {
    private Checks() {}

    static List<Check> of(Question question, Arrangement arrangement, Analysis analysis) {
        return List.of();
    }
}
