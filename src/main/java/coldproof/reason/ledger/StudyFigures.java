package coldproof.reason.ledger;

import java.util.Map;

/** Gives the figure of a workload from a study of one's own. */
public interface StudyFigures {
    /**
     * The figure.
     *
     * @param study name of the study as the ledger writes it
     * @param levels level of each factor that picks the condition; of factors not named, all levels go in
     * @param workload what it is to measure
     * @throws coldproof.quantity.Refused if the study cannot be read, measures something else, or has no such trial
     */
    LedgerFigure of(String study, Map<String, String> levels, LedgerWorkload workload);
}
