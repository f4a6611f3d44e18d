package coldproof.job.speed;

import coldproof.job.BenchStudy;
import coldproof.job.Machine;
import coldproof.job.PlanJob;
import coldproof.plan.Position;
import coldproof.study.Source;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/** Makes a simulated study of many trials, to measure how quickly it opens: {@code LargeStudy FOLDER TRIALS_PER_LEVEL_AND_SESSION}. */
public final class LargeStudy {
    private LargeStudy() {}

    /** Makes it: ten sessions. */
    public static void main(String[] words) {
        Path folder = Path.of(words[0]);
        Machine machine = Machine.atHand();
        PlanJob.create(folder, "coldproof: 1\ntitle: A large simulated study\ndevice: ridge desktop\nmetric: {name: rate, unit: frames/s, better: higher}\n"
                + "compare: {factor: fan, baseline: auto, against: maximum}\nmatters: 3 %\nclaim: gain\nfactors: {fan: {change: per trial, levels: [auto, maximum]}}\n"
                + "layout: {sessions: 10, trials per condition: " + words[1] + ", order: counterbalanced}\nseed: 1\n");
        PlanJob.freeze(folder, machine, Optional.empty());
        SplittableRandom random = new SplittableRandom(1);
        try (BenchStudy study = BenchStudy.open(folder, machine)) {
            for (Position position : List.copyOf(study.view().sheet().positions())) {
                study.record(position, 50 + random.nextDouble(), List.of(), Optional.empty(), OffsetDateTime.now(machine.wall()), 60, Source.SIMULATED);
                study.closeWhenDone(position);
            }
        }
    }
}
