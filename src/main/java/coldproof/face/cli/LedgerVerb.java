package coldproof.face.cli;

import coldproof.job.LedgerJob;
import coldproof.job.Machine;
import coldproof.reason.ledger.Ledger;
import coldproof.report.json.LedgerJson;
import coldproof.report.text.LedgerText;
import picocli.CommandLine.Model.CommandSpec;

/** {@code ledger}: devices side by side. */
final class LedgerVerb implements Verb {
    @Override
    public void describe(CommandSpec spec) {
        Options.arguments(spec, "FILE", "0..1", "The ledger: workloads, and devices with their figures (plans/ledgers/trail-laptops.yaml is one).");
        Options.value(spec, "--reference", "DEVICE", "The device to compare with (default: as the file says).");
        Options.value(spec, "--out", "FILE", "Write it as a page with plots too.");
    }

    @Override
    public int run(Invocation call) {
        if (call.arguments().isEmpty()) {
            throw Invocation.refused("coldproof ledger", "no file is named", "a ledger file", "Name it: coldproof ledger ledger.yaml");
        }
        LedgerJob.Read read = LedgerJob.of(Invocation.pathOf("FILE", call.arguments().get(0)), call.text("--reference"));
        call.remark(LedgerJob.looks(read, Machine.atHand()));
        Ledger ledger = read.ledger();
        call.path("--out").ifPresent(page -> {
            LedgerJob.write(ledger, page);
            call.messages().println("Wrote " + page);
        });
        call.answer(() -> LedgerJson.of(ledger), () -> LedgerText.of(ledger, call.streams().columns()));
        return ExitStatus.DONE;
    }
}
