package coldproof.reason.checklist;

import coldproof.plan.Factor;
import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.plan.RunSheet;
import coldproof.study.StudyState;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How far the study is.
 *
 * @param trial number of the trial at hand; the last when all are settled
 * @param trials all trials of the run sheet
 * @param session number of the session at hand
 * @param sessions all sessions
 * @param inSession place of the trial in its session
 * @param ofSession trials of that session
 * @param recorded trials that count
 * @param skipped trials left out
 * @param open trials still to run
 * @param condition what is set for this trial, such as {@code chilled, fan maximum}; empty when nothing is left
 */
public record Progress(int trial, int trials, int session, int sessions, int inSession, int ofSession, int recorded, int skipped, int open,
        String condition) {
    /** Where the study stands at a step. */
    public static Progress at(Step step, Plan plan, RunSheet sheet, StudyState state) {
        int all = sheet.positions().size();
        Optional<Position> position = step.position();
        int session = position.map(Position::session).orElse(step.session() == 0 ? sheet.sessions() : step.session());
        int ofSession = sheet.ofSession(session).size();
        return new Progress(position.map(Position::number).orElse(all), all, session, sheet.sessions(),
                position.map(Position::orderInSession).orElse(ofSession), ofSession, state.trials().size(), state.skipped().size(),
                Checklist.toCome(sheet, state), position.map(at -> condition(plan, at)).orElse(""));
    }

    /**
     * The condition in few words: the level alone where it names itself, the factor before it where the same word may be a level of another
     * factor or says little (auto, off, a number). Factors held at one level are left out.
     */
    public static String condition(Plan plan, Position position) {
        List<String> words = new ArrayList<>();
        for (Factor factor : plan.factors()) {
            if (factor.levels().size() > 1) {
                String level = position.levels().get(factor.name());
                boolean namesItself = factor.change() == coldproof.plan.Change.PER_SESSION;
                words.add(namesItself ? level : factor.name() + " " + level);
            }
        }
        return String.join(", ", words);
    }
}
