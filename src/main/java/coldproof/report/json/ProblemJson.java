package coldproof.report.json;

import coldproof.quantity.Problem;
import java.util.List;

/** Problems as JSON: {@code {"problems":[{"what":..,"file":..,"line":..,"column":..,"expected":..,"nearest":[..],"remedy":..}]}}. */
public final class ProblemJson {
    private ProblemJson() {}

    /** The document for what was refused. */
    public static JsonObject of(List<Problem> problems) {
        return new JsonObject().put("problems", problems.stream().map(ProblemJson::one).toList());
    }

    private static JsonObject one(Problem problem) {
        JsonObject json = new JsonObject().put("what", problem.what()).put("file", problem.where().file());
        if (problem.where().line() > 0) {
            json.put("line", problem.where().line());
        }
        if (problem.where().column() > 0) {
            json.put("column", problem.where().column());
        }
        return json.put("expected", problem.expected()).put("nearest", problem.nearest()).put("remedy", problem.remedy());
    }
}
