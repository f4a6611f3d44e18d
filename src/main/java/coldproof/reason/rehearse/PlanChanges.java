package coldproof.reason.rehearse;

import coldproof.plan.Layout;
import coldproof.plan.Order;
import coldproof.plan.Plan;
import coldproof.plan.Scheduler;
import coldproof.quantity.Counted;
import coldproof.reason.sizing.CheapestStudy;
import coldproof.reason.sizing.PlanSize;
import coldproof.reason.sizing.SearchTerms;
import coldproof.reason.sizing.SizingAnswer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.IntFunction;

/**
 * Changes of a plan worth trying. Each goes one way (more sessions of one level, of both, more trials in each...) just as far as the wanted
 * power asks; where the power is there already, each takes away as much as it can spare.
 */
final class PlanChanges {
    private static final int FURTHEST = 40; // steps in one direction
    private static final double BARELY = 0.005; // of power: a change that adds less is not worth offering
    private static final int LOOKS = 3;
    private static final double LOOKS_LOSE = 0.2; // of the accepted misses: what three looks of a small study cost in power (rehearsed)
    private final Plan plan;
    private final SizingAnswer size;
    private final double power;

    /** A change with what it can see. */
    record Candidate(String what, Plan plan, SizingAnswer size) {
        double power() {
            return size.size().map(found -> found.power()).filter(value -> !Double.isNaN(value)).orElse(0.0);
        }

        double minutes() {
            return size.minutes().total().orElse(size.size().map(found -> (double) found.trialsTotal()).orElse(0.0))
                    + (SearchTerms.USUAL_WEIGHT - 1) * size.minutes().outdoors().orElse(0);
        }
    }

    PlanChanges(Plan plan, SizingAnswer size) {
        this.plan = plan;
        this.size = size;
        power = new Candidate("", plan, size).power();
    }

    /** The best, the most promising first. */
    List<Candidate> best(int most) {
        boolean enough = power >= plan.errors().power();
        List<Candidate> found = new ArrayList<>();
        for (IntFunction<Candidate> way : ways()) {
            Candidate candidate = enough ? spared(way) : extended(way);
            if (candidate != null && (enough || candidate.power() > power + BARELY)) {
                found.add(candidate);
            }
        }
        cheapest(plan.errors().power()).filter(best -> !best.equals(plan.layout())).map(best -> candidate("cheapest: " + counted(best), best, plan.looks()))
                .filter(one -> !enough || one.minutes() < new Candidate("", plan, size).minutes()).filter(one -> found.stream()
                        .noneMatch(other -> other.plan().layout().equals(one.plan().layout()))).ifPresent(found::add);
        found.sort(Comparator.comparing((Candidate one) -> one.power() < plan.errors().power()).thenComparingDouble(Candidate::minutes)
                .thenComparing(Comparator.comparingDouble(Candidate::power).reversed()));
        List<Candidate> best = new ArrayList<>(found.subList(0, Math.min(most - 1, found.size())));
        withLooks().ifPresent(best::add);
        return best;
    }

    /** The cheapest layout looked at before its end: a little larger at most, and shorter on average. */
    private Optional<Candidate> withLooks() {
        double power = plan.errors().power();
        return plan.looks() > 1 ? Optional.empty()
                : cheapest(power + LOOKS_LOSE * (1 - power)).map(best -> candidate(counted(best) + ", " + LOOKS + " looks", best, LOOKS));
    }

    /** The cheapest of all layouts, where the plan says what things cost. */
    private Optional<Layout> cheapest(double wanted) {
        boolean priced = plan.layout().kind() == Layout.Kind.SESSIONS && plan.budget().trialSeconds().isPresent();
        if (!priced) {
            return Optional.empty();
        }
        CheapestStudy study = CheapestStudy.of(plan, SearchTerms.USUAL, wanted);
        return study.advice().best().map(study::layout);
    }

    private static String counted(Layout layout) {
        StringBuilder words = new StringBuilder();
        boolean shared = layout.counts().containsKey("");
        boolean named = !shared && layout.counts().size() == 2; // of more levels the names would fill the line
        layout.counts().forEach((level, count) -> words.append(words.isEmpty() ? "" : " + ").append(count).append(named ? " " + level : ""));
        return words + (!named ? layout.total() == 1 ? " session" : " sessions" : "") + ", " + layout.trialsPerCondition() + " each";
    }

    /** The first step on a way that reaches the wanted power; else twice as many where that helps at all. */
    private Candidate extended(IntFunction<Candidate> way) {
        for (int step = 1; step <= FURTHEST; step++) {
            Candidate candidate = way.apply(step);
            if (candidate == null) {
                return null;
            }
            if (candidate.power() >= plan.errors().power()) {
                return candidate;
            }
        }
        return way.apply(2);
    }

    private Candidate spared(IntFunction<Candidate> way) {
        Candidate last = null;
        for (int step = -1; step >= -FURTHEST; step--) {
            Candidate candidate = way.apply(step);
            if (candidate == null || candidate.power() < plan.errors().power()) {
                return last;
            }
            last = candidate;
        }
        return last;
    }

    private List<IntFunction<Candidate>> ways() {
        List<IntFunction<Candidate>> ways = new ArrayList<>();
        Layout layout = plan.layout();
        String unit = switch (layout.kind()) {
            case SESSIONS -> "session";
            case PAIRED -> "pair";
            case ALTERNATING -> "trial";
        };
        List<String> compared = layout.counts().keySet().stream()
                .filter(level -> level.isEmpty() || !plan.sessionFactor().isPresent() || isCompared(level)).toList();
        if (layout.counts().size() > 1 && plan.compare().against().size() == 1) {
            for (String level : compared) {
                ways.add(step -> counts(step, List.of(level), words(step, unit, level)));
            }
        }
        ways.add(step -> counts(step, List.copyOf(layout.counts().keySet()), words(step, unit, layout.counts().size() > 1 ? "each level" : "")));
        if (layout.kind() == Layout.Kind.SESSIONS) {
            ways.add(this::trials);
        }
        return ways;
    }

    private boolean isCompared(String level) {
        return !plan.comparesSessions() || level.equals(plan.compare().baseline()) || plan.compare().against().contains(level);
    }

    private static String words(int step, String unit, String level) {
        int size = Math.abs(step);
        return size + (step > 0 ? " more " : size == 1 ? " less " : " fewer ") + unit + (size == 1 ? "" : "s") + (level.isEmpty() ? "" : " of " + level);
    }

    private Candidate counts(int step, List<String> of, String what) {
        Map<String, Integer> counts = new LinkedHashMap<>(plan.layout().counts());
        int least = plan.layout().kind() == Layout.Kind.SESSIONS && !plan.comparesSessions() ? 1 : 2;
        for (String level : of) {
            counts.merge(level, step, Integer::sum);
            if (counts.get(level) < least) {
                return null;
            }
        }
        return candidate(what, new Layout(plan.layout().kind(), counts, plan.layout().trialsPerCondition(), plan.layout().order()), plan.looks());
    }

    /** More or fewer trials of each condition; a mirrored order keeps an even number. */
    private Candidate trials(int step) {
        boolean mirrored = plan.layout().order() == Order.COUNTERBALANCED && plan.layout().trialsPerCondition() % 2 == 0
                && plan.factors().stream().anyMatch(factor -> factor.change() == coldproof.plan.Change.PER_TRIAL && factor.levels().size() > 1);
        int trials = plan.layout().trialsPerCondition() + (mirrored ? 2 * step : step);
        if (trials < 1) {
            return null;
        }
        return candidate(Counted.of(trials, "trial") + " each, not " + plan.layout().trialsPerCondition(),
                new Layout(plan.layout().kind(), plan.layout().counts(), trials, plan.layout().order()), plan.looks());
    }

    private Candidate candidate(String what, Layout layout, int looks) {
        Plan changed = plan.with(layout, looks);
        return new Candidate(what, changed, PlanSize.of(changed, Scheduler.draw(changed, new SplittableRandom(plan.seed()))));
    }
}
