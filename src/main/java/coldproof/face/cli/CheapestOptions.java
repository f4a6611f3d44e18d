package coldproof.face.cli;

import coldproof.quantity.Dimension;
import coldproof.reason.sizing.SearchTerms;
import coldproof.reason.sizing.StudyLimits;
import coldproof.reason.sizing.StudyLimits.Limit;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import picocli.CommandLine.Model.CommandSpec;

/** What a search for the cheapest plan may be told. */
final class CheapestOptions {
    private static final int MOST = 200;

    private CheapestOptions() {}

    static void describe(CommandSpec spec) {
        Options.flag(spec, "--cheapest", "Search every number of sessions and trials for the cheapest plan that decides, within the study's budget.");
        Options.value(spec, "--outdoors-at-most", "TIME", "cheapest: time outdoors in all (default: the plan's).");
        Options.value(spec, "--outing-at-most", "TIME", "cheapest: time outdoors in one outing.");
        Options.value(spec, "--sessions-per-outing", "N", "cheapest: sessions outdoors in one outing (default: 1).");
        Options.value(spec, "--outings-per-day", "N", "cheapest: outings in one day (default: 1).");
        Options.value(spec, "--daylight", "TIME", "cheapest: daylight in a day; outings with their travel must fit.");
        Options.value(spec, "--days", "N", "cheapest: days with an outing.");
        Options.value(spec, "--time-at-most", "TIME", "cheapest: time in all, travel included.");
        Options.value(spec, "--travel", "TIME", "cheapest: way out and back, once for each outing.");
        Options.value(spec, "--outdoors-counts", "NUMBER", "cheapest: what a minute outdoors counts against one indoors (default: 3).");
        Options.value(spec, "--battery", "ENERGY", "cheapest: one charge; the sessions of an outing must fit.");
        Options.value(spec, "--trial-energy", "ENERGY", "cheapest: energy of a trial.");
        Options.value(spec, "--opening-energy", "ENERGY", "cheapest: energy of a session before its first trial.");
    }

    static SearchTerms terms(Invocation call) {
        Map<Limit, Double> limits = new EnumMap<>(Limit.class);
        time(limits, call, "--outdoors-at-most", Limit.OUTDOORS_IN_ALL);
        time(limits, call, "--outing-at-most", Limit.OUTDOORS_PER_OUTING);
        time(limits, call, "--daylight", Limit.DAYLIGHT);
        time(limits, call, "--time-at-most", Limit.TIME_IN_ALL);
        count(limits, call, "--sessions-per-outing", Limit.SESSIONS_PER_OUTING);
        count(limits, call, "--outings-per-day", Limit.OUTINGS_PER_DAY);
        count(limits, call, "--days", Limit.DAYS);
        quantity(limits, call, "--battery", Dimension.ENERGY, Limit.BATTERY);
        double weight = call.number("--outdoors-counts", SearchTerms.USUAL_WEIGHT);
        if (!(weight >= 1 && weight <= 1000)) {
            throw Invocation.refused("--outdoors-counts", weight + " is out of range", "from 1 to 1000", "Correct the value of --outdoors-counts.");
        }
        return new SearchTerms(new StudyLimits(limits), weight, amount(call, "--travel", Dimension.TIME), amount(call, "--opening-energy", Dimension.ENERGY),
                amount(call, "--trial-energy", Dimension.ENERGY));
    }

    private static void time(Map<Limit, Double> limits, Invocation call, String option, Limit limit) {
        quantity(limits, call, option, Dimension.TIME, limit);
    }

    private static void quantity(Map<Limit, Double> limits, Invocation call, String option, Dimension dimension, Limit limit) {
        OptionalDouble value = call.quantity(option, dimension);
        if (value.isPresent() && !(value.getAsDouble() > 0)) {
            throw Invocation.refused(option, "nothing fits into none", dimension.expected() + ", above 0", "Correct the value of " + option + ".");
        }
        value.ifPresent(most -> limits.put(limit, most));
    }

    private static void count(Map<Limit, Double> limits, Invocation call, String option, Limit limit) {
        OptionalInt value = call.whole(option, 1, MOST);
        value.ifPresent(most -> limits.put(limit, (double) most));
    }

    private static double amount(Invocation call, String option, Dimension dimension) {
        double value = call.quantity(option, dimension).orElse(0);
        if (!(value >= 0)) {
            throw Invocation.refused(option, "it is below 0", dimension.expected(), "Correct the value of " + option + ".");
        }
        return value;
    }
}
