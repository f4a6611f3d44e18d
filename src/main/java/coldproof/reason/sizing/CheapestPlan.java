package coldproof.reason.sizing;

import coldproof.reason.sizing.StudyLimits.Limit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Finds the cheapest study that can decide, by looking at every number of sessions per level and of trials per session within the limits:
 * the exact optimum, no sampling. Counts of the two levels may differ.
 *
 * <p>A level per session: the log change has variance {@code (session^2 + run^2/(r c)) (1/k0 + 1/k1)} with {@code k0 + k1 - 2} degrees of
 * freedom, for k0 and k1 sessions of r trials in each of c conditions. Both levels in every session: {@code 2 run^2 / (r c k)} with
 * {@code 2 r c k - k - 2 c + 1}, for k sessions of r trials of each level in each of c conditions.
 *
 * @see "T. Kalibera, R. Jones, Rigorous Benchmarking in Reasonable Time, ISMM 2013, 63-74, for the continuous optimum (from memory)"
 */
public final class CheapestPlan {
    /** How much costlier than the best a plan of the frontier may be. */
    public static final double FRONTIER_STRETCH = 1.5;
    private static final int RUNNERS_UP = 3;
    private static final double CHEAPER = 1e-9; // relative; plans closer than this cost the same
    private static final Comparator<Candidate> CHEAPEST = Comparator.comparingDouble(Candidate::weightedSeconds)
            .thenComparingDouble(Candidate::standardErrorLog).thenComparingInt(Candidate::againstSessions)
            .thenComparingInt(Candidate::baselineSessions);
    private final PlanSpace space;
    private final StudyLimits limits;
    private final DecisionPower power;
    private final double wanted;
    private final LargestStandardError largest;
    private long examined;

    private CheapestPlan(PlanSpace space, StudyLimits limits, DecisionPower power, double wanted, LargestStandardError largest) {
        this.space = space;
        this.limits = limits;
        this.power = power;
        this.wanted = wanted;
        this.largest = largest;
    }

    /**
     * Searches.
     *
     * @param space what may be varied, its noise and its costs
     * @param limits what must not be exceeded
     * @param power what a study of given precision can decide
     * @param wanted the power wanted, in (0, 1)
     */
    public static PlanAdvice search(PlanSpace space, StudyLimits limits, DecisionPower power, double wanted) {
        if (!(wanted > 0 && wanted < 1)) {
            throw new IllegalArgumentException("wanted power " + wanted + " is outside (0, 1)");
        }
        LargestStandardError largest = new LargestStandardError(power, wanted, space.standardErrorLog(4, 4, 2));
        return new CheapestPlan(space, limits, power, wanted, largest).advice();
    }

    private PlanAdvice advice() {
        List<Candidate> allowed = new ArrayList<>();
        List<Candidate> reaching = new ArrayList<>();
        collect(allowed, reaching);
        reaching.sort(CHEAPEST);
        Optional<PlannedStudy> best = reaching.stream().findFirst().map(this::planned);
        Optional<PlannedStudy> equal = space.sharesSessions() ? Optional.empty()
                : reaching.stream().filter(plan -> plan.baselineSessions() == plan.againstSessions()).findFirst().map(this::planned);
        double costliest = best.map(plan -> FRONTIER_STRETCH * plan.weightedSeconds()).orElse(Double.POSITIVE_INFINITY);
        List<PlannedStudy> frontier = new Frontier(this::planned, space.anyOutdoors()).of(allowed, costliest);
        return new PlanAdvice(wanted, best, strongest(allowed), equal, runnersUp(reaching), frontier, lifted(best), space.trialsOptimum(),
                space.ratioOptimum(), examined);
    }

    private void collect(List<Candidate> allowed, List<Candidate> reaching) {
        int mostSessions = limits.count(Limit.SESSIONS_PER_LEVEL);
        for (int trials = 1; trials <= limits.count(Limit.TRIALS_PER_CONDITION); trials++) {
            for (int against = space.leastSessions(); against <= mostSessions; against++) {
                int from = space.sharesSessions() ? against : space.leastSessions();
                int to = space.sharesSessions() ? against : mostSessions;
                for (int baseline = from; baseline <= to; baseline++) {
                    Candidate plan = Candidate.of(space, baseline, against, trials, limits);
                    examined++;
                    if (!plan.fits()) {
                        break; // a further session of the baseline would fit no better
                    }
                    if (plan.degrees() >= 1) {
                        allowed.add(plan);
                        if (largest.allows(plan.standardErrorLog(), plan.degrees())) {
                            reaching.add(plan);
                        }
                    }
                }
            }
        }
    }

    private PlannedStudy planned(Candidate plan) {
        return plan.planned(power.of(plan.standardErrorLog(), plan.degrees()));
    }

    /** Only plans beaten by none in both standard error and degrees of freedom can be the strongest. */
    private Optional<PlannedStudy> strongest(List<Candidate> allowed) {
        List<Candidate> sorted = new ArrayList<>(allowed);
        sorted.sort(Comparator.comparingDouble(Candidate::standardErrorLog).thenComparing(CHEAPEST));
        Optional<PlannedStudy> strongest = Optional.empty();
        int mostDegrees = 0;
        for (Candidate plan : sorted) {
            if (plan.degrees() > mostDegrees) {
                mostDegrees = plan.degrees();
                PlannedStudy one = planned(plan);
                if (strongest.isEmpty() || one.power() > strongest.get().power()) {
                    strongest = Optional.of(one);
                }
            }
        }
        return strongest;
    }

    private List<PlannedStudy> runnersUp(List<Candidate> reaching) {
        List<Candidate> chosen = new ArrayList<>();
        for (Candidate plan : reaching) {
            boolean seen = chosen.stream().anyMatch(other -> other.baselineSessions() == plan.baselineSessions()
                    && other.againstSessions() == plan.againstSessions());
            if (!seen) {
                chosen.add(plan);
            }
            if (chosen.size() > RUNNERS_UP) {
                break;
            }
        }
        return chosen.stream().skip(1).map(this::planned).toList();
    }

    private Map<Limit, PlannedStudy> lifted(Optional<PlannedStudy> best) {
        Map<Limit, PlannedStudy> found = new EnumMap<>(Limit.class);
        for (Limit limit : limits.most().keySet()) {
            CheapestPlan freer = new CheapestPlan(space, limits.without(limit), power, wanted, largest);
            List<Candidate> reaching = new ArrayList<>();
            freer.collect(new ArrayList<>(), reaching);
            examined += freer.examined;
            reaching.stream().min(CHEAPEST)
                    .filter(plan -> best.isEmpty() || plan.weightedSeconds() < best.get().weightedSeconds() * (1 - CHEAPER))
                    .ifPresent(plan -> found.put(limit, planned(plan)));
        }
        return found;
    }
}
