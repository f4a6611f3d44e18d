package coldproof.face.dialogue;

import coldproof.job.LogJob;
import coldproof.reason.checklist.Meters;
import coldproof.report.text.ChecklistText;
import java.util.ArrayList;
import java.util.List;

/** What runs out at the bench, a line each. */
public final class MeterLines {
    private MeterLines() {}

    /** Minutes outdoors, what limits this stay, the battery; a line in capitals calls for attention. */
    public static List<String> of(LogJob log) {
        Meters meters = log.meters();
        List<String> lines = new ArrayList<>(ChecklistText.meters(meters));
        if (meters.outdoorsNow()) {
            log.stayLimit().ifPresent(limit -> lines.add(1, ChecklistText.stay(meters, limit.kind().word(), limit.seconds())));
        }
        return lines;
    }
}
