package coldproof.job;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;

/** A bench with clocks that only move when told, and a frozen study on it. */
public final class TestBench {
    private final TestClock clock = new TestClock("2026-01-14T09:00:00Z");
    private final Path folder;

    /** A study with this plan, frozen. */
    public TestBench(Path folder, String plan) {
        this.folder = folder;
        PlanJob.create(folder, plan);
        PlanJob.freeze(folder, machine(), Optional.empty());
    }

    /** The study folder. */
    public Path folder() {
        return folder;
    }

    /** The checklist of the study. */
    public LogJob log() {
        return LogJob.open(folder, machine());
    }

    /** Lets time go by. */
    public void pass(Duration time) {
        clock.pass(time);
    }

    /** This bench's clocks. */
    public Machine machine() {
        return clock.machine();
    }

    /** Two sessions of each ambient, two trials in each, start conditions, a soak of 20 min, a budget outdoors. */
    public static final String WINTER_PLAN = """
            coldproof: 1
            title: Does chilled air lift the render rate?
            device: trail laptop
            metric: {name: render rate, unit: frames/s, better: higher}
            compare: {factor: ambient, baseline: room, against: chilled}
            matters: 3 %
            claim: gain
            factors:
              ambient: {change: per session, levels: {room: 21 °C, chilled: -6 °C}}
              fan: {change: per trial, levels: [auto, maximum]}
            noise: {run to run: 1.2 %, session to session: 0.8 %, from: guess}
            layout: {sessions: {room: 2, chilled: 2}, trials per condition: 1, order: counterbalanced}
            budget: {trial: 6 min, soak: 20 min, outdoors: [chilled], outdoors at most: 3 h}
            start: {battery at least: 40 %, power source: battery}
            abort: {battery below: 15 %}
            seed: 7
            """;
    /** Four trials of each fan setting in one sitting, nothing to read. */
    public static final String FAN_PLAN = """
            coldproof: 1
            title: Is the fan at maximum worth its noise?
            device: ridge desktop
            metric: {name: build time, unit: s, better: lower}
            compare: {factor: fan, baseline: auto, against: maximum}
            matters: 2 %
            claim: gain
            factors:
              fan: {change: per trial, levels: [auto, maximum]}
            noise: {run to run: 1 %, from: guess}
            layout: {trials: 4, order: counterbalanced}
            seed: 11
            """;
}
