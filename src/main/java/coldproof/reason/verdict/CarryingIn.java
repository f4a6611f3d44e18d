package coldproof.reason.verdict;

import coldproof.plan.NoiseAssumption;
import coldproof.quantity.LogRatio;
import coldproof.stats.model.Estimate;
import coldproof.stats.model.NoiseComponents;
import coldproof.stats.model.SessionMeans;
import coldproof.stats.model.VarianceEstimate;
import java.util.Optional;
import java.util.OptionalDouble;

/** Judges a change by noise carried in from earlier work: alone where the trials have none of their own, else pooled with it. */
final class CarryingIn {
    private final NoiseAssumption known;

    private CarryingIn(NoiseAssumption known) {
        this.known = known;
    }

    /** The noise to carry in for a stratum: only where it was measured, with degrees of freedom. */
    static Optional<CarryingIn> of(Question question, Stratum stratum) {
        return question.carriedIn().filter(noise -> (stratum == Stratum.BETWEEN_SESSIONS ? noise.sessionDf() : noise.runDf()).orElse(0) >= 1).map(CarryingIn::new);
    }

    /** The difference of session means, where a level has one session. */
    Analysis singleSessions(SessionMeans means) {
        int sessions = means.baseline().length + means.against().length;
        double weight = 1.0 / means.baseline().length + 1.0 / means.against().length;
        Estimate own = sessions > 2 ? means.pooled() : Estimate.of(means.difference(), 0, 1);
        CarriedNoise noise = ofSessions(means, sessions > 2 ? OptionalDouble.of(own.standardError() / Math.sqrt(weight)) : OptionalDouble.empty(), sessions - 2.0);
        return judged(own.logDifference(), weight, noise, "difference of session means");
    }

    /** A test between sessions, its noise pooled with that carried in. */
    Analysis sessions(Analysis own, SessionMeans means) {
        double weight = 1.0 / means.baseline().length + 1.0 / means.against().length;
        double ownSd = own.estimate().standardError() / Math.sqrt(weight);
        return judged(own.estimate().logDifference(), weight, ofSessions(means, OptionalDouble.of(ownSd), own.estimate().degreesOfFreedom()), own.method());
    }

    /** A test of trials or pairs, its noise pooled with that carried in. */
    Analysis runs(Analysis own) {
        double ownSd = own.runLogSd().orElseThrow();
        double weight = own.estimate().standardError() * own.estimate().standardError() / (ownSd * ownSd);
        CarriedNoise noise = new CarriedNoise(known.from(), LogRatio.logSdOfCv(known.runCvPercent()), known.runDf().orElseThrow(), own.runLogSd(),
                own.estimate().degreesOfFreedom());
        return judged(own.estimate().logDifference(), weight, noise, own.method());
    }

    private Analysis judged(double difference, double weight, CarriedNoise noise, String method) {
        Estimate estimate = Estimate.of(difference, Math.sqrt(weight * noise.pooledVariance()), noise.pooledDegreesOfFreedom());
        String how = noise.ownLogSd().isPresent() ? ", its noise pooled with that carried in from " : ", judged by noise carried in from ";
        return new Analysis(estimate, method + how + known.from(), OptionalDouble.empty(), OptionalDouble.empty(), Optional.of(noise));
    }

    private CarriedNoise ofSessions(SessionMeans means, OptionalDouble ownLogSd, double ownDegreesOfFreedom) {
        double trials = trialsPerSession(means);
        VarianceEstimate carried = components(trials).ofSessionMean(trials);
        return new CarriedNoise(known.from(), carried.logSd(), carried.degreesOfFreedom(), ownLogSd, ownDegreesOfFreedom);
    }

    /** Sessions of the two levels with unequal numbers of trials: the number that gives the same variance of the difference. */
    private static double trialsPerSession(SessionMeans means) {
        double baseline = 1.0 / means.baseline().length;
        double against = 1.0 / means.against().length;
        return (baseline + against) / (baseline / means.trialsPerBaselineSession() + against / means.trialsPerAgainstSession());
    }

    /** The mean squares behind the percents; where it is not known how many trials a session of the pilot had, as many as here. */
    private NoiseComponents components(double trialsHere) {
        double run = square(LogRatio.logSdOfCv(known.runCvPercent()));
        double trials = known.trialsPerSession().orElse(trialsHere);
        double runs = Math.max(run, Double.MIN_NORMAL);
        return new NoiseComponents(runs, (int) Math.max(1, known.runDf().orElse(1)), runs + trials * square(LogRatio.logSdOfCv(known.sessionCvPercent())),
                (int) known.sessionDf().orElseThrow(), trials);
    }

    private static double square(double value) {
        return value * value;
    }
}
