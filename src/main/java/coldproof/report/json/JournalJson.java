package coldproof.report.json;

import coldproof.quantity.ConstantWord;
import coldproof.study.JournalChange;
import coldproof.study.JournalCheck;
import coldproof.study.JournalFlaw;
import coldproof.study.Oddity;

/** The documents of {@code journal --json}. */
public final class JournalJson {
    private JournalJson() {}

    /** What a look at a journal found. */
    public static JsonObject check(JournalCheck check) {
        JsonObject json = new JsonObject().put("file", check.file()).put("sound", check.isSound()).put("entries", check.entries())
                .put("trials", check.trials()).put("lastEntry", check.lastSequence());
        json.put("lastSum", check.lastSum().isEmpty() ? null : check.lastSum()).put("entriesLost", check.entriesLost());
        json.put("damagedLines", check.damagedLines()).put("damages", check.flaws().stream().map(JournalJson::flaw).toList());
        return json.put("oddities", check.oddities().stream().map(JournalJson::oddity).toList());
    }

    /** What repairing or merging did. */
    public static JsonObject change(JournalChange change) {
        return new JsonObject().put("changed", change.keptAs().isPresent()).put("keptAs", change.keptAs()).put("said", change.said())
                .put("journal", check(change.after()));
    }

    private static JsonObject flaw(JournalFlaw flaw) {
        return new JsonObject().put("line", flaw.line()).put("byteOffset", flaw.byteOffset()).put("kind", flaw.kind()).put("text", flaw.text())
                .put("entriesLost", flaw.entriesLost());
    }

    private static JsonObject oddity(Oddity oddity) {
        return new JsonObject().put("entry", oddity.sequence()).put("kind", ConstantWord.of(oddity.kind()))
                .put("text", oddity.text());
    }
}
