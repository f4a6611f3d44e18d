package coldproof.reason.verdict;

import coldproof.plan.Change;
import coldproof.stats.Tail;
import coldproof.stats.power.DetectableEffect;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * One kind of study to be simulated: how its trials lie, what its noise is like, and whether its levels are mixed in counterbalanced blocks or by lot.
 *
 * @param layout which of the four
 * @param words what is special about it
 * @param sizes trials in each session (between, within), or the numbers of trials of the two levels (trials), or of pairs
 * @param levels level of each session, where it is set per session: b or c
 * @param sessionSd session-to-session log standard deviation in units of the run-to-run one
 * @param noise of the runs
 * @param byLot whether the order is by lot rather than in blocks and their mirror images
 */
record Situation(Stratum layout, String words, int[] sizes, String levels, double sessionSd, Noise noise, boolean byLot) {
    private static final double RUN_SD = 0.01;

    /** What the runs' noise is like; each has the variance {@link #RUN_SD} squared, the drift comes on top. */
    enum Noise {
        NORMAL, DRIFT, DRIFT_ADJUSTED, AUTOCORRELATED, HEAVY, SESSIONS_HEAVY
    }

    Question question() {
        Change change = layout == Stratum.BETWEEN_SESSIONS ? Change.PER_SESSION : Change.PER_TRIAL;
        return new Question("fan", "b", "c", coldproof.plan.Better.HIGHER, 3, coldproof.plan.Claim.GAIN, 0.05, Optional.of(change),
                Optional.empty());
    }

    /** The log effect that the exact power formulas give nine chances in ten, for normal noise and sessions of the mean size. */
    double plannedEffect() {
        double meanSize = Arrays.stream(sizes).average().orElseThrow();
        double error;
        double df;
        switch (layout) {
            case TRIALS -> {
                error = RUN_SD * Math.sqrt(1.0 / sizes[0] + 1.0 / sizes[1]);
                df = sizes[0] + sizes[1] - 2;
            }
            case PAIRS -> {
                error = RUN_SD * Math.sqrt(2.0 / sizes[0]);
                df = sizes[0] - 1;
            }
            case WITHIN_SESSIONS -> {
                double all = Arrays.stream(sizes).sum();
                error = RUN_SD * Math.sqrt(4 / all);
                df = all - sizes.length - 1;
            }
            default -> {
                long baseline = levels.chars().filter(level -> level == 'b').count();
                error = RUN_SD * Math.sqrt((sessionSd * sessionSd + 1 / meanSize) * (1.0 / baseline + 1.0 / (sizes.length - baseline)));
                df = sizes.length - 2;
            }
        }
        return error * DetectableEffect.noncentrality(df, 0.05, Tail.TWO, 0.9);
    }

    /** Trials without a change. */
    List<Observation> study(SplittableRandom chance) {
        return switch (layout) {
            case TRIALS -> run(chance, "", order(chance, sizes[0], sizes[1]), "", 0);
            case PAIRS -> pairs(chance);
            case WITHIN_SESSIONS -> within(chance);
            case BETWEEN_SESSIONS -> between(chance);
        };
    }

    private List<Observation> pairs(SplittableRandom chance) {
        StringBuilder order = new StringBuilder();
        while (order.length() < 2 * sizes[0]) {
            boolean first = chance.nextBoolean();
            order.append(first ? "bc" : "cb");
            if (!byLot && order.length() < 2 * sizes[0]) {
                order.append(first ? "cb" : "bc");
            }
        }
        return run(chance, "", order.toString(), "p", 0);
    }

    private List<Observation> within(SplittableRandom chance) {
        List<Observation> all = new ArrayList<>();
        for (int session = 0; session < sizes.length; session++) {
            int half = sizes[session] / 2;
            boolean more = sizes[session] % 2 == 1 && session % 2 == 0;
            all.addAll(run(chance, Integer.toString(session), order(chance, sizes[session] - half - (more ? 1 : 0), half + (more ? 1 : 0)), "", day(chance)));
        }
        return all;
    }

    private List<Observation> between(SplittableRandom chance) {
        List<Integer> place = new ArrayList<>();
        for (int session = 0; session < sizes.length; session++) {
            place.add(session);
        }
        do {
            shuffle(place, chance);
        } while (separated(place));
        List<Observation> all = new ArrayList<>();
        for (int when = 0; when < sizes.length; when++) {
            int session = place.get(when);
            all.addAll(run(chance, Integer.toString(when), levels.substring(session, session + 1).repeat(sizes[session]), "", day(chance)));
        }
        return all;
    }

    private boolean separated(List<Integer> place) {
        int changes = 0;
        for (int i = 1; i < place.size(); i++) {
            changes += levels.charAt(place.get(i)) == levels.charAt(place.get(i - 1)) ? 0 : 1;
        }
        return changes == 1;
    }

    private static <T> void shuffle(List<T> list, SplittableRandom chance) {
        for (int i = list.size() - 1; i > 0; i--) {
            Collections.swap(list, i, chance.nextInt(i + 1));
        }
    }

    private double day(SplittableRandom chance) {
        return RUN_SD * sessionSd * (noise == Noise.SESSIONS_HEAVY ? heavy(chance) : Simulated.normal(chance));
    }

    /** Blocks of two and two with their mirror images, or any order that does not run one level before the other. */
    private String order(SplittableRandom chance, int baseline, int against) {
        if (!byLot && baseline == against && baseline % 2 == 0) {
            StringBuilder blocks = new StringBuilder();
            for (int block = 0; block < baseline / 2; block++) {
                blocks.append(chance.nextBoolean() ? "bccb" : "cbbc");
            }
            return blocks.toString();
        }
        List<String> order = new ArrayList<>(Collections.nCopies(baseline, "b"));
        order.addAll(Collections.nCopies(against, "c"));
        do {
            shuffle(order, chance);
        } while (order.size() > 3 && String.join("", order).matches("b+c+|c+b+"));
        return String.join("", order);
    }

    private List<Observation> run(SplittableRandom chance, String session, String order, String pair, double day) {
        List<Observation> trials = new ArrayList<>();
        double state = Simulated.normal(chance);
        for (int i = 0; i < order.length(); i++) {
            double left = switch (noise) {
                case NORMAL, SESSIONS_HEAVY -> Simulated.normal(chance);
                case DRIFT, DRIFT_ADJUSTED -> Simulated.normal(chance) - 3.0 * i / Math.max(1, order.length() - 1);
                case HEAVY -> heavy(chance);
                case AUTOCORRELATED -> state = 0.5 * state + Math.sqrt(0.75) * Simulated.normal(chance);
            };
            Observation trial = new Observation(order.substring(i, i + 1), session, i + 1, pair.isEmpty() ? "" : pair + i / 2, List.of(), Math.exp(day + RUN_SD * left));
            trials.add(noise == Noise.DRIFT_ADJUSTED ? trial.withCovariate(i - 0.5 * (order.length() - 1)) : trial);
        }
        return trials;
    }

    /** Student's t with three degrees of freedom, scaled to variance 1. */
    private static double heavy(SplittableRandom chance) {
        double squares = 0;
        for (int i = 0; i < 3; i++) {
            double z = Simulated.normal(chance);
            squares += z * z;
        }
        return Simulated.normal(chance) / Math.sqrt(squares / 3) / Math.sqrt(3);
    }
}
