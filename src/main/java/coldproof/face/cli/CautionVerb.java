package coldproof.face.cli;

import coldproof.job.CautionJob;
import coldproof.physics.DeviceClass;
import coldproof.reason.safety.Phase;
import coldproof.reason.safety.SafetyCard;
import coldproof.report.json.CautionJson;
import coldproof.report.text.CautionText;
import coldproof.report.text.FieldCardText;
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
        Options.flag(spec, "--card", "The field card: one page to print and take along.");
        Options.value(spec, "--device-class", String.join("|", deviceWords()), "Kind of device, for how fast it warms up (default: laptop).");
    }

    @Override
    public int run(Invocation call) {
        Optional<Phase> phase = call.has("--phase") ? Phase.of(call.word("--phase", Phase.words(), "")) : Optional.empty();
        String device = call.word("--device-class", deviceWords(), DeviceClass.LAPTOP.word());
        DeviceClass deviceClass = Arrays.stream(DeviceClass.values()).filter(one -> one.word().equals(device)).findFirst().orElseThrow();
        SafetyCard card = CautionJob.card(new CautionJob.Request(SafetyOptions.taken(call), phase, deviceClass));
        call.answer(CautionJson.of(card), call.flag("--card") ? FieldCardText.of(card, "") : CautionText.of(card, call.streams().columns()));
        return ExitStatus.DONE;
    }

    private static List<String> deviceWords() {
        return Arrays.stream(DeviceClass.values()).map(DeviceClass::word).toList();
    }
}
