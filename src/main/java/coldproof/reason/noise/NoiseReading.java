package coldproof.reason.noise;

import coldproof.plan.NoiseAssumption;
import coldproof.quantity.Interval;
import coldproof.quantity.LogRatio;
import coldproof.stats.interval.ConfidenceInterval;
import coldproof.stats.model.DesignMatrix;
import coldproof.stats.model.NoiseComponents;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The noise of a bench as coefficients of variation, percent.
 *
 * @param runCvPercent run to run
 * @param runDf degrees of freedom behind it
 * @param runInterval its 90 % interval, percent
 * @param sessionCvPercent session to session; empty where every condition had one session
 * @param sessionDf degrees of freedom between sessions, 0 where there are none
 * @param sessionInterval its 90 % interval, percent
 * @param sessionNegative whether the session variance came out below zero and is shown as 0
 * @param studies how many studies it rests on
 * @param trials how many trials it rests on
 * @param components the mean squares themselves, for pooling and for carrying into a verdict
 */
public record NoiseReading(double runCvPercent, int runDf, Interval runInterval, OptionalDouble sessionCvPercent, int sessionDf,
        Optional<Interval> sessionInterval, boolean sessionNegative, int studies, int trials, NoiseComponents components) {
    private static final double LEVEL = 0.9;

    /**
     * The noise pooled over studies of the same device and workload.
     *
     * @param studies the trials of each; conditions are taken out study by study
     * @return empty when no study repeated a condition inside a session
     */
    public static Optional<NoiseReading> of(List<List<NoiseTrial>> studies) {
        List<NoiseComponents> parts = new ArrayList<>();
        int trials = 0;
        for (List<NoiseTrial> study : studies) {
            Optional<NoiseComponents> part = components(study);
            if (part.isPresent()) {
                parts.add(part.get());
                trials += study.size();
            }
        }
        return parts.isEmpty() ? Optional.empty() : Optional.of(reading(NoiseComponents.pooled(parts), parts.size(), trials));
    }

    private static Optional<NoiseComponents> components(List<NoiseTrial> study) {
        if (study.size() < 2) {
            return Optional.empty();
        }
        double[] logScores = study.stream().mapToDouble(trial -> Math.log(trial.score())).toArray();
        int[] session = indices(study.stream().map(NoiseTrial::session).toList());
        int[] condition = indices(study.stream().map(NoiseTrial::condition).toList());
        int conditions = 1 + Arrays.stream(condition).max().orElse(0);
        DesignMatrix effects = DesignMatrix.intercept(study.size());
        if (conditions > 1) {
            effects = effects.withFactor("condition", condition, conditions);
        }
        try {
            return Optional.of(NoiseComponents.of(logScores, effects, session));
        } catch (IllegalArgumentException nothingRepeated) {
            return Optional.empty(); // documented: no session has a second trial of its condition, or nothing varies
        }
    }

    private static int[] indices(List<String> labels) {
        Map<String, Integer> numbers = new LinkedHashMap<>();
        labels.forEach(label -> numbers.putIfAbsent(label, numbers.size()));
        return labels.stream().mapToInt(numbers::get).toArray();
    }

    /** As a plan or a verdict takes it in. */
    public NoiseAssumption assumption(String from) {
        return new NoiseAssumption(runCvPercent, sessionCvPercent.orElse(0), OptionalDouble.of(runDf),
                sessionDf > 0 ? OptionalDouble.of(sessionDf) : OptionalDouble.empty(), OptionalDouble.of(components.trialsPerSession()), from);
    }

    private static NoiseReading reading(NoiseComponents components, int studies, int trials) {
        boolean sessions = components.knowsSessions();
        OptionalDouble sessionCv = sessions ? OptionalDouble.of(LogRatio.cvPercentOfLogSd(components.sessionLogSd())) : OptionalDouble.empty();
        Optional<Interval> sessionInterval = sessions ? Optional.of(percent(components.sessionLogSdInterval(LEVEL))) : Optional.empty();
        return new NoiseReading(LogRatio.cvPercentOfLogSd(components.runLogSd()), components.runDegreesOfFreedom(), percent(components.runLogSdInterval(LEVEL)),
                sessionCv, components.sessionDegreesOfFreedom(), sessionInterval, components.isSessionVarianceNegative(), studies, trials, components);
    }

    private static Interval percent(ConfidenceInterval logSd) {
        return new Interval(logSd.level(), LogRatio.cvPercentOfLogSd(logSd.low()), LogRatio.cvPercentOfLogSd(logSd.high()));
    }
}
