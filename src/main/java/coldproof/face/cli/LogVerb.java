package coldproof.face.cli;

import coldproof.face.dialogue.Lines;
import coldproof.face.dialogue.LogDialogue;
import coldproof.job.DryRun;
import coldproof.job.LogJob;
import coldproof.job.Machine;
import coldproof.job.OneShot;
import coldproof.reason.checklist.Ask;
import coldproof.reason.checklist.Question;
import coldproof.report.json.ChecklistJson;
import coldproof.report.text.ChecklistText;
import coldproof.report.text.ProblemText;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;

/** {@code log}: the checklist at the bench, line by line; or one entry from options. */
final class LogVerb implements Verb {
    @Override
    public void describe(CommandSpec spec) {
        Options.value(spec, "--score", "SCORE", "Record the next trial with this score and leave; \"60.1 61.0 60.8\" gives all its loops.");
        Options.value(spec, "--skip", "REASON", "Leave the next trial out.");
        Options.valueOrNone(spec, "--undo", "REASON", "Take back the last trial or skip.");
        Options.value(spec, "--note", "TEXT", "Write a note.");
        Options.valueOrNone(spec, "--pause", "REASON", "Stop for now.");
        Options.value(spec, "--abort", "REASON", "End the open session for good.");
        Options.value(spec, "--elsewhere", "FILE", Options.ELSEWHERE);
        Options.value(spec, "--die", "TEMPERATURE", "With --score: the die temperature before the trial (default: as a sensor of this computer shows it; - says it was not read).");
        Options.value(spec, "--battery", "PERCENT", "With --score: the battery's charge before the trial (default as for --die).");
        Options.value(spec, "--power", "wall|battery", "With --score: the power source (default as for --die).");
        Options.flag(spec, "--no-sensors", "Ask no sensor of this computer: the device tested is another one.");
        Options.flag(spec, "--plain", "Line by line, without the screen: for readers of the screen and slow lines.");
        Options.value(spec, "--air", "TEMPERATURE", "With --score: the air temperature, where the session begins with it.");
        Options.value(spec, "--wind", "SPEED", "With --score: the wind, where a session outdoors begins with it.");
        Options.value(spec, "--humidity", "PERCENT", "With --score: the relative humidity of that air.");
        Options.value(spec, "--precipitation", "none|snow|rain|fog", "With --score: what falls from the sky.");
        Options.value(spec, "--device-temperature", "TEMPERATURE", "With --score: the coldest part of a device that came in from outdoors.");
        Options.value(spec, "--acknowledged-by", "NAME", "With --score: the person at the bench who has seen to every caution that holds.");
        Options.valueOrNone(spec, "--rehearse", "DIR", "A dry run against simulated instruments, in a folder of its own (default: beside the study, named -dry-run).");
        Options.value(spec, "--soak", "TIME", "With --score: how long the device settled in this session.");
    }

    @Override
    public int run(Invocation call) {
        return call.has("--rehearse") ? rehearse(call) : bench(call);
    }

    /** Practice, line by line whatever the terminal, so that what the instruments show stands above each question. */
    private static int rehearse(Invocation call) {
        Optional<Path> wanted = call.text("--rehearse").filter(name -> !name.isBlank()).map(name -> Invocation.pathOf("--rehearse", name));
        Path folder = DryRun.folder(call.study(), wanted, Machine.atHand());
        try (LogJob log = LogJob.open(folder, Machine.atHand())) {
            Streams streams = call.streams();
            Lines lines = Lines.of(streams.in(), call.json() ? call.messages() : streams.out(), streams.columns(), streams.interactive());
            LogDialogue.tell(lines, List.of("DRY RUN, SIMULATED: everything is kept in " + folder + ", and the study itself stays as it is. Type what the "
                    + "instruments show, as at the bench; quit leaves."));
            LogDialogue.run(log, lines, DryRun.instruments(call.study(), log.view().plan())::show);
            Question next = log.question();
            call.answer(() -> ChecklistJson.of(next, log.view().state()), () -> "Dry run: " + log.view().state().trials().size() + " of "
                    + log.view().sheet().positions().size() + " trials practised. Look at it with: coldproof verdict --study " + folder + "\n");
        }
        return ExitStatus.DONE;
    }

    private static int bench(Invocation call) {
        Machine machine = call.flag("--no-sensors") ? Machine.atHand() : Machine.underTest();
        try (LogJob log = LogJob.open(call.study().toAbsolutePath(), call.path("--elsewhere"), machine)) {
            call.messages().print(ProblemText.of(log.problems()));
            List<OneShot.Entry> entries = OneShot.entries(call::text);
            Streams streams = call.streams();
            Lines lines = Lines.of(streams.in(), call.json() ? call.messages() : streams.out(), streams.columns(), streams.interactive());
            if (!entries.isEmpty()) {
                LogDialogue.tell(lines, OneShot.run(log, entries));
            } else if (call.screens().isPresent() && !call.json() && !call.flag("--plain")) {
                call.screens().get().log(log);
            } else {
                LogDialogue.run(log, lines);
            }
            log.elsewhere().forEach(call.messages()::println);
            Question next = log.question();
            String text = next.ask() == Ask.FINISHED ? "All trials are settled.\n" + call.next("coldproof verdict")
                    : call.next(ChecklistText.progress(next.progress()));
            call.answer(() -> ChecklistJson.of(next, log.view().state()), () -> text);
        }
        return ExitStatus.DONE;
    }
}
