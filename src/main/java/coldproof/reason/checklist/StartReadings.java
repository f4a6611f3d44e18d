package coldproof.reason.checklist;

import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.plan.StartConditions;
import coldproof.study.Numbered;
import coldproof.study.Observed;
import coldproof.study.Session;
import coldproof.study.StartConditionsChecked;
import coldproof.study.StudyState;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;

/** Compares what was read before a trial with what the plan wants. */
public final class StartReadings {
    /** Name of the die temperature among readings. */
    public static final String DIE = "die temperature";
    /** Name of the battery's charge among readings. */
    public static final String BATTERY = "battery";
    /** Name of the power source among readings. */
    public static final String POWER = "power source";
    private static final double SOAK_TOLERANCE = 0.98; // of the planned time: a person looks at a clock that shows whole minutes

    private StartReadings() {}

    /** What the plan wants read before each trial, in the order to ask for it. */
    public static List<String> wanted(StartConditions start) {
        List<String> wanted = new ArrayList<>();
        start.dieWithinKelvins().ifPresent(kelvins -> wanted.add(DIE));
        start.batteryAtLeastPercent().ifPresent(percent -> wanted.add(BATTERY));
        start.powerSource().ifPresent(source -> wanted.add(POWER));
        return wanted;
    }

    /** One sentence for each condition that does not hold, or was not read. */
    public static List<String> deviations(Plan plan, StudyState state, Position position, Map<String, Observed> readings) {
        List<String> deviations = new ArrayList<>();
        String trial = "trial " + position.number() + ": ";
        List<String> unread = wanted(plan.start()).stream().filter(name -> !readings.containsKey(name)).toList();
        if (!unread.isEmpty()) {
            deviations.add(trial + "the " + String.join(", the ", unread) + (unread.size() == 1 ? " was not read" : " were not read"));
        }
        deviations.addAll(off(plan, state, position, readings));
        return deviations;
    }

    /** One sentence for each condition that was read and does not hold. */
    public static List<String> off(Plan plan, StudyState state, Position position, Map<String, Observed> readings) {
        List<String> deviations = new ArrayList<>();
        String trial = "trial " + position.number() + ": ";
        double die = amount(readings, DIE);
        double first = firstDie(state, position).orElse(die);
        plan.start().dieWithinKelvins().ifPresent(within -> {
            if (Math.abs(die - first) > within) {
                deviations.add(trial + String.format(Locale.ROOT, "die at %s °C, %s K from the session's first trial; planned within %s K", plain(die),
                        plain(Math.abs(die - first)), plain(within)));
            }
        });
        plan.start().batteryAtLeastPercent().ifPresent(least -> {
            if (amount(readings, BATTERY) < least) {
                deviations.add(trial + "battery at " + plain(amount(readings, BATTERY)) + " %, planned at least " + plain(least) + " %");
            }
        });
        plan.start().powerSource().ifPresent(source -> {
            if (readings.containsKey(POWER) && !readings.get(POWER).word().equals(source)) {
                deviations.add(trial + "on " + readings.get(POWER).word() + " power, planned " + source);
            }
        });
        return deviations;
    }

    /**
     * One sentence when a soak was cut short or not noted.
     *
     * @param seconds how long it was; NaN when nobody knows
     */
    public static List<String> soakDeviations(Plan plan, int session, double seconds) {
        double planned = plan.budget().soakSeconds();
        if (Double.isNaN(seconds)) {
            return List.of("session " + session + ": the soak was not noted, planned " + minutes(planned));
        }
        if (seconds >= SOAK_TOLERANCE * planned) {
            return List.of();
        }
        return List.of("session " + session + ": soaked " + minutes(seconds) + ", planned " + minutes(planned));
    }

    /** What the plan's own limits forbid to start with, in sentences; empty when nothing. */
    public static List<String> stops(Plan plan, Map<String, Observed> readings) {
        List<String> stops = new ArrayList<>();
        plan.abort().batteryBelowPercent().ifPresent(limit -> {
            if (amount(readings, BATTERY) < limit) {
                stops.add("The battery is at " + plain(amount(readings, BATTERY)) + " %, below the plan's limit of " + plain(limit) + " %.");
            }
        });
        plan.abort().dieAboveCelsius().ifPresent(limit -> {
            if (amount(readings, DIE) > limit) {
                stops.add("The die is at " + plain(amount(readings, DIE)) + " °C, above the plan's limit of " + plain(limit) + " °C.");
            }
        });
        return stops;
    }

    /** Die temperature at the first trial of the session since it was opened last, °C; empty when this is the first. */
    public static OptionalDouble firstDie(StudyState state, Position position) {
        long since = state.openSession().map(Session::lastOpenedBy).map(coldproof.study.Entry::sequence).orElse(0L);
        return state.startConditions().stream()
                .filter(check -> check.sequence() > since && check.event().session() == position.session() && check.event().position().isPresent())
                .map(Numbered::event).map(StartConditionsChecked::readings).filter(readings -> readings.containsKey(DIE))
                .mapToDouble(readings -> amount(readings, DIE)).findFirst();
    }

    static double amount(Map<String, Observed> readings, String name) {
        Observed reading = readings.get(name);
        return reading == null ? Double.NaN : reading.amount().orElse(Double.NaN);
    }

    private static String minutes(double seconds) {
        return plain(Math.round(seconds / 6) / 10.0) + " min";
    }

    private static String plain(double number) {
        return String.format(Locale.ROOT, "%.1f", number).replaceFirst("\\.0$", "");
    }
}
