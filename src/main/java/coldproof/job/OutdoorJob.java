package coldproof.job;

import coldproof.physics.Site;
import coldproof.physics.Sun;
import coldproof.plan.Position;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.safety.OutdoorBudget;
import coldproof.reason.safety.OutdoorStay;
import coldproof.reason.safety.Reading;
import coldproof.reason.safety.SafetyScene;
import coldproof.reason.safety.StudySafety;
import coldproof.reason.sizing.SearchTerms;
import coldproof.reason.sizing.StudyLimits.Limit;
import coldproof.report.text.Figures;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** Holds the planned sessions in the open air against cold, daylight and battery. */
public final class OutdoorJob {
    private OutdoorJob() {}

    /**
     * What is known of the day.
     *
     * @param taken readings or a forecast, as written; they go before the plan's own figures
     * @param site where; empty: as the study says, else the sun is left out
     * @param begin when a session begins; empty: at sunrise of this day
     */
    public record Day(List<Taken> taken, Optional<Site> site, Optional<Instant> begin) {
        /** Nothing beyond the plan and the study's safety file. */
        public static final Day UNKNOWN = new Day(List.of(), Optional.empty(), Optional.empty());

        /** Copies. */
        public Day {
            taken = List.copyOf(taken);
        }
    }

    /**
     * Every session in the open air that is still to run, beside its budget.
     *
     * @param today the moment, for the day's length
     * @throws Refused if a reading cannot be true, or the study's safety file is wrong
     */
    public static List<OutdoorStay> stays(StudyView study, Day day, Instant today) {
        PlanScene planned = new PlanScene(study.plan(), study.sheet());
        StudySafety safety = StudyRules.of(study);
        SafetyScene given = Taken.scene(day.taken());
        Set<Integer> settled = study.state().settled();
        List<OutdoorStay> stays = new ArrayList<>();
        for (int session = 1; session <= study.sheet().sessions(); session++) {
            List<Position> trials = study.sheet().ofSession(session);
            OptionalDouble seconds = planned.staySeconds(session);
            boolean open = trials.stream().anyMatch(trial -> !settled.contains(trial.number()));
            if (!trials.isEmpty() && planned.outdoors(trials.get(0)) && seconds.isPresent() && open) {
                SafetyScene scene = withDay(safety, day, today, safety.known().overlaidBy(planned.of(trials.get(0))).overlaidBy(given));
                String level = trials.get(0).levels().values().stream().filter(study.plan().budget().outdoors()::contains).findFirst().orElse("");
                stays.add(new OutdoorStay(session, level, seconds.getAsDouble(), trials.size(), study.plan().budget().trialSeconds().orElseThrow(),
                        OutdoorBudget.of(scene)));
            }
        }
        return stays;
    }

    private static SafetyScene withDay(StudySafety safety, Day day, Instant today, SafetyScene scene) {
        Optional<Site> site = day.site().or(safety::site);
        if (site.isEmpty()) {
            return scene;
        }
        Optional<Duration> light = day.begin().isPresent() ? Sun.lightLeft(day.begin().get(), site.get()) : length(today, site.get());
        return light.isEmpty() ? scene : scene.with(Reading.DAYLIGHT, light.get().toSeconds());
    }

    /** From sunrise to sunset; empty when the sun does not set, no time when it does not rise. */
    private static Optional<Duration> length(Instant today, Site site) {
        LocalDate date = today.plusSeconds(Math.round(site.longitudeDegrees() * 240)).atZone(ZoneOffset.UTC).toLocalDate();
        Sun.Day sun = Sun.day(date, site);
        if (sun.sunrise().isPresent() && sun.sunset().isPresent()) {
            return Optional.of(Duration.between(sun.sunrise().get(), sun.sunset().get()));
        }
        return sun.noonElevationDegrees() > Sun.RISE_AND_SET ? Optional.empty() : Optional.of(Duration.ZERO);
    }

    /**
     * Refuses a plan with a session in the open air that breaks its budget.
     *
     * @throws Refused with one problem for each kind of session that does not fit
     */
    public static void refuseWhatDoesNotFit(List<OutdoorStay> stays) {
        Map<OutdoorStay, List<String>> alike = new LinkedHashMap<>();
        stays.stream().filter(stay -> !stay.fits()).forEach(stay -> alike
                .computeIfAbsent(new OutdoorStay(0, stay.condition(), stay.seconds(), stay.trials(), stay.trialSeconds(), stay.budget()), any -> new ArrayList<>())
                .add(Integer.toString(stay.session())));
        List<Problem> problems = new ArrayList<>();
        alike.forEach((stay, sessions) -> problems.add(problem(stay, sessions)));
        if (!problems.isEmpty()) {
            throw new Refused(problems);
        }
    }

    private static Problem problem(OutdoorStay stay, List<String> sessions) {
        OutdoorBudget.Limit limit = stay.budget().binding().orElseThrow();
        String remedy = stay.trialsThatFit() > 0 ? "Plan at most " + stay.trialsThatFit() + " trials in such a session, a shorter soak, or a milder day."
                : "Not even one trial fits after opening and soak: plan a shorter soak or a milder day.";
        String who = sessions.size() == 1 ? "session " + sessions.get(0) : "each of the sessions " + String.join(", ", sessions);
        return Problem.of(who + " (" + stay.condition() + ") keeps you out for " + Figures.minutes(stay.seconds() / 60)
                + ", longer than " + limit.kind().word() + " allows", Place.named("budget"),
                "at most " + Figures.minutes(limit.seconds() / 60) + " at a time: " + limit.because(), remedy);
    }

    /** The terms of a search for the cheapest plan, with one outing no longer than the study's cold and battery allow. */
    static SearchTerms within(StudyView study, SearchTerms terms) {
        StudySafety safety = StudyRules.of(study);
        SafetyScene scene = safety.known().overlaidBy(new PlanScene(study.plan(), study.sheet()).coldestOuting());
        if (!scene.is(Reading.OUTDOORS, "yes")) {
            return terms;
        }
        Optional<OutdoorBudget.Limit> binding = OutdoorBudget.of(scene).binding();
        double before = terms.limits().most().getOrDefault(Limit.OUTDOORS_PER_OUTING, Double.POSITIVE_INFINITY);
        if (binding.isEmpty() || binding.get().seconds() >= before) {
            return terms;
        }
        if (!(binding.get().seconds() > 0)) {
            throw new Refused(Problem.of("no session in the open air is possible: " + binding.get().kind().word(), Place.named("budget"),
                    "a milder day: " + binding.get().because(), "Plan a level that people and battery can bear."));
        }
        return new SearchTerms(terms.limits().with(Limit.OUTDOORS_PER_OUTING, binding.get().seconds()), terms.outdoorWeight(), terms.travelSecondsPerOuting(),
                terms.wattHoursOpening(), terms.wattHoursPerTrial());
    }
}
