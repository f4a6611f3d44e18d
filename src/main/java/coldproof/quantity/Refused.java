package coldproof.quantity;

import java.util.List;

/** Carries one or more {@link Problem}s of the person up to a face, which shows them and ends with status 2. Never a programmer's mistake. */
public final class Refused extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final transient List<Problem> problems;

    /** All the problems found, at least one. */
    public Refused(List<Problem> problems) {
        super(problems.isEmpty() ? "refused without a problem" : problems.get(0).where().text() + ": " + problems.get(0).what());
        this.problems = List.copyOf(problems);
    }

    /** A single problem. */
    public Refused(Problem problem) {
        this(List.of(problem));
    }

    /** What was wrong, in the order found. */
    public List<Problem> problems() {
        return problems;
    }
}
