package coldproof.reason.rehearse;

import java.util.function.IntConsumer;

/** Does pieces of work that do not depend on one another, on as many threads as it likes. */
@FunctionalInterface
public interface Workers {
    /** One after the other. */
    Workers ONE = (pieces, piece) -> {
        for (int i = 0; i < pieces; i++) {
            piece.accept(i);
        }
    };

    /** Does every piece from 0 to {@code pieces - 1} and returns when all are done. */
    void all(int pieces, IntConsumer piece);
}
