package coldproof.reason.checklist;

import coldproof.study.Observed;
import java.util.List;
import java.util.Optional;

/**
 * What the person is asked now.
 *
 * @param ask what for
 * @param step the step it belongs to
 * @param progress how far the study is
 * @param doubt what is wrong with the score, when a second look is asked for
 * @param safety what the safety rules say, a line each, where that is asked for
 * @param shown what a sensor of this computer shows of it now; empty where none does
 * @param usual what Enter alone answers, as it would be typed; empty where Enter alone is no answer
 */
public record Question(Ask ask, Step step, Progress progress, Optional<Doubt> doubt, List<String> safety, Optional<Observed> shown, String usual) {
    /** Copies. */
    public Question {
        safety = List.copyOf(safety);
    }
}
