package coldproof.job;

import coldproof.plan.Better;
import coldproof.plan.Change;
import coldproof.plan.Claim;
import coldproof.plan.NoiseAssumption;
import coldproof.reason.verdict.Question;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * A question about a table of trials made elsewhere.
 *
 * @param file the table
 * @param metric column of the score
 * @param better which way is good
 * @param factor column of the compared factor
 * @param baseline its level compared with
 * @param against its changed levels; empty: every other level of the table
 * @param change how often the factor was set; empty: found from the table
 * @param session column of the session
 * @param order column of the run order
 * @param pair column of the pair
 * @param where conditions {@code column = value} that a row must meet
 * @param adjustFor columns of factors to adjust for
 * @param mattersPercent the smallest change worth having
 * @param claim what is to be shown
 * @param falseAlarm two-sided error rate
 * @param carriedIn noise from earlier work, to be pooled with that of the trials
 */
public record TrialsQuestion(Path file, String metric, Better better, String factor, String baseline, List<String> against, Optional<Change> change,
        Optional<String> session, Optional<String> order, Optional<String> pair, List<Where> where, List<String> adjustFor, double mattersPercent,
        Claim claim, double falseAlarm, Optional<NoiseAssumption> carriedIn) {
    /**
     * A condition on rows.
     *
     * @param column its name
     * @param value the text its cell must hold
     */
    public record Where(String column, String value) {}

    /** Copies. */
    public TrialsQuestion {
        against = List.copyOf(against);
        where = List.copyOf(where);
        adjustFor = List.copyOf(adjustFor);
    }

    /** The question to the verdict, for one changed level. */
    Question question(String changed) {
        Question alone = new Question(factor, baseline, changed, better, mattersPercent, claim, falseAlarm, change, Optional.empty());
        return carriedIn.map(alone::pooledWith).orElse(alone);
    }
}
