package coldproof.face.cli;

import coldproof.job.CautionJob;
import coldproof.job.Machine;
import coldproof.physics.DeviceClass;
import coldproof.reason.safety.Phase;
import coldproof.reason.safety.SafetyCard;
import coldproof.report.json.CautionJson;
import coldproof.report.text.CautionText;
import coldproof.report.text.FieldCardText;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;

/** {@code caution}: go, take care or stop for this air, this device and this part of the job. */
final class CautionVerb implements Verb {
    @Override
    public void describe(CommandSpec spec) {
        SafetyOptions.describe(spec);
        Options.value(spec, "--phase", String.join("|", Phase.words()), "Only the part of the job about to begin (default: the whole outing).");
        SafetyOptions.describePlace(spec);
        Options.values(spec, "--coming-in", "FILE", "A log of the device warming up in the room, switched to idle: its own time constant (a study's traces/coming-in* besides).");
        Options.flag(spec, "--card", "The field card: one page to print and take along.");
        Options.value(spec, "--device-class", String.join("|", deviceWords()), "Kind of device, for how fast it warms up (default: as the study says, else laptop).");
    }

    @Override
    public int run(Invocation call) {
        Optional<Phase> phase = call.has("--phase") ? Phase.of(call.word("--phase", Phase.words(), "")) : Optional.empty();
        Optional<DeviceClass> device = call.has("--device-class")
                ? DeviceClass.of(call.word("--device-class", deviceWords(), "")) : Optional.empty();
        CautionJob.Request request = new CautionJob.Request(SafetyOptions.taken(call), phase, device, SafetyOptions.site(call),
                call.texts("--coming-in").stream().map(name -> Invocation.pathOf("--coming-in", name)).toList());
        Instant when = SafetyOptions.moment(call).orElseGet(() -> Machine.atHand().wall().instant());
        CautionJob.Answer answer = answer(call, request, when);
        answer.remarks().forEach(call.messages()::println);
        SafetyCard card = answer.card();
        call.answer(() -> CautionJson.of(card), () -> call.flag("--card") ? FieldCardText.of(card, answer.title()) : CautionText.of(card, call.streams().columns()));
        return ExitStatus.DONE;
    }

    /** A study is judged for where one was named, or lies in the current folder. */
    private static CautionJob.Answer answer(Invocation call, CautionJob.Request request, Instant when) {
        return call.has("--study") || CautionJob.isStudy(call.study()) ? CautionJob.ofStudy(request, call.study(), when) : CautionJob.ofReadings(request, when);
    }

    private static List<String> deviceWords() {
        return Arrays.stream(DeviceClass.values()).map(DeviceClass::word).toList();
    }
}
