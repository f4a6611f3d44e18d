package coldproof.face.cli;

import coldproof.job.JournalJob;
import coldproof.job.Machine;
import coldproof.quantity.Refused;
import coldproof.report.export.CsvText;
import coldproof.report.export.TidyTable;
import coldproof.report.json.ExportJson;
import coldproof.report.json.JournalJson;
import coldproof.report.json.JsonObject;
import coldproof.report.text.Harmless;
import coldproof.report.text.JournalText;
import coldproof.study.JournalChange;
import coldproof.study.JournalCheck;
import coldproof.study.MergeChoice;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.Model.CommandSpec;

/** {@code journal}: checks, exports, repairs and merges the record of a study. */
final class JournalVerb implements Verb {
    private static final List<String> STEPS = List.of("check", "export", "repair", "merge");

    @Override
    public void describe(CommandSpec spec) {
        Options.arguments(spec, "STEP", "1..2", "check [PLACE]: look for damage and clock oddities, in this study or in another folder or journal file. "
                + "export: the trials as a table, on standard output. repair: write a sound journal, keep the damaged one. "
                + "merge PLACE: take in another copy of the study, or a journal that went on elsewhere.");
        Options.value(spec, "--table", "NAME", "export: which table (default: trials); dictionary explains all columns.");
        Options.value(spec, "--to", "DIR", "export: write every table as a file in this folder instead.");
        Options.value(spec, "--keep", "first|second", "merge: whose word counts where the two contradict each other, this study's (first) or the other's; "
                + "the other stays on record.");
    }

    @Override
    public int run(Invocation call) {
        String step = call.arguments().get(0);
        return switch (step) {
            case "check" -> check(call);
            case "export" -> export(call);
            case "repair" -> repair(call);
            case "merge" -> merge(call);
            default -> throw Invocation.wrongWord("coldproof journal", step, STEPS);
        };
    }

    private static int check(Invocation call) {
        Path place = call.arguments().size() > 1 ? Invocation.pathOf("PLACE", call.arguments().get(1)) : call.study();
        JournalCheck check = JournalJob.check(place);
        call.answer(() -> JournalJson.check(check), () -> JournalText.check(check, call.streams().columns()));
        return check.isSound() ? ExitStatus.DONE : ExitStatus.FAIL;
    }

    private static int repair(Invocation call) {
        refuseSecond(call);
        return say(call, JournalJob.repair(call.study(), Machine.atHand()));
    }

    private static int merge(Invocation call) {
        if (call.arguments().size() < 2) {
            throw Invocation.refused("coldproof journal merge", "the other copy is missing", "a study folder or a journal file",
                    "Name it: coldproof journal merge ../copy-of-the-study");
        }
        String keep = call.word("--keep", List.of("first", "second", "neither"), "neither");
        MergeChoice choice = MergeChoice.valueOf(keep.toUpperCase(Locale.ROOT));
        return say(call, JournalJob.merge(call.study(), Invocation.pathOf("PLACE", call.arguments().get(1)), choice, Machine.atHand()));
    }

    private static int say(Invocation call, JournalChange change) {
        call.answer(() -> JournalJson.change(change), () -> JournalText.change(change, call.streams().columns()));
        return change.after().isSound() ? ExitStatus.DONE : ExitStatus.FAIL;
    }

    private static int export(Invocation call) {
        refuseSecond(call);
        List<TidyTable> tables = JournalJob.tables(call.study());
        if (call.has("--to")) {
            List<Path> files = JournalJob.write(tables, Invocation.pathOf("--to", call.need("--to", "tables")));
            StringBuilder text = new StringBuilder();
            files.forEach(file -> text.append("Wrote ").append(Harmless.line(file.toString())).append('\n'));
            call.answer(() -> new JsonObject().put("files", files.stream().map(Path::toString).toList()), () -> text.toString());
            return ExitStatus.DONE;
        }
        String name = call.word("--table", tables.stream().map(TidyTable::name).toList(), "trials");
        TidyTable wanted = tables.stream().filter(table -> table.name().equals(name)).findFirst().orElseThrow();
        call.answer(() -> ExportJson.of(tables), () -> CsvText.of(wanted));
        return ExitStatus.DONE;
    }

    private static void refuseSecond(Invocation call) {
        if (call.arguments().size() > 1) {
            throw unwanted(call.arguments().get(1));
        }
    }

    private static Refused unwanted(String word) {
        return Invocation.refused("coldproof journal", "\"" + word + "\" is one word too many", "only the step", "Leave it out; a study is named with --study DIR.");
    }
}
