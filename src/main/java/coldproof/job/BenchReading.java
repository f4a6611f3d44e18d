package coldproof.job;

import coldproof.plan.Plan;
import coldproof.plan.Position;
import coldproof.quantity.Celsius;
import coldproof.quantity.Dimension;
import coldproof.quantity.NearestWord;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.QuantityText;
import coldproof.quantity.Refused;
import coldproof.reason.checklist.Ask;
import coldproof.reason.checklist.StartReadings;
import coldproof.reason.safety.Reading;
import coldproof.study.Observed;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Readings as typed at the bench, turned into what the journal keeps. */
final class BenchReading {
    /** Name of the air temperature among readings. */
    static final String AIR = "air";
    /** Name of the wind speed among readings. */
    static final String WIND = "wind";
    private static final double AIR_TOLERANCE_KELVINS = 5; // beyond it the level is hardly the one planned (common practice)
    private static final List<String> SOURCES = List.of("wall", "battery");

    private BenchReading() {}

    /** The name a reading has in the journal. */
    static String name(Ask ask) {
        return switch (ask) {
            case AIR -> AIR;
            case WIND -> WIND;
            case HUMIDITY -> Reading.HUMIDITY.word();
            case PRECIPITATION -> Reading.PRECIPITATION.word();
            case DEVICE -> Reading.DEVICE.word();
            case DIE -> StartReadings.DIE;
            case BATTERY -> StartReadings.BATTERY;
            case POWER -> StartReadings.POWER;
            default -> throw new IllegalArgumentException(ask + " is no reading");
        };
    }

    /** What is asked before each trial of a plan, in order. */
    static List<Ask> startAsks(Plan plan) {
        return StartReadings.wanted(plan.start()).stream().map(BenchReading::ask).toList();
    }

    private static Ask ask(String reading) {
        return switch (reading) {
            case StartReadings.DIE -> Ask.DIE;
            case StartReadings.BATTERY -> Ask.BATTERY;
            default -> Ask.POWER;
        };
    }

    /**
     * Reads an answer.
     *
     * @throws Refused if it is no such reading
     */
    static Observed read(Ask ask, String text) {
        return switch (ask) {
            case AIR -> amount(ask, text, Dimension.TEMPERATURE, -80, 60, "°C");
            case WIND -> amount(ask, text, Dimension.SPEED, 0, 60, "m/s");
            case HUMIDITY, PRECIPITATION, DEVICE -> taken(name(ask), text);
            case DIE -> amount(ask, text, Dimension.TEMPERATURE, -60, 130, "°C");
            case BATTERY -> amount(ask, text, Dimension.PERCENT, 0, 100, "%");
            case POWER -> source(text);
            default -> throw new IllegalArgumentException(ask + " is no reading");
        };
    }

    private static Observed taken(String name, String text) {
        Taken taken = new Taken(Reading.of(name).orElseThrow(), name, text.toLowerCase(Locale.ROOT));
        return GateJournal.conditions(Taken.scene(List.of(taken)).values()).get(name);
    }

    private static Observed amount(Ask ask, String text, Dimension dimension, double least, double most, String unit) {
        double value;
        try {
            value = QuantityText.read(text, dimension, QuantityText.Bare.ALLOWED);
        } catch (QuantityText.Unreadable unreadable) {
            throw refused(ask, "\"" + text + "\" is no reading of it", dimension.expected());
        }
        if (!(value >= least && value <= most)) {
            throw refused(ask, "\"" + text + "\" is out of range", "from " + Math.round(least) + " to " + Math.round(most) + " " + unit);
        }
        return Observed.of(value, unit);
    }

    private static Observed source(String text) {
        String word = text.toLowerCase(Locale.ROOT);
        for (String source : SOURCES) {
            if (word.equals(source) || word.equals(source.substring(0, 1))) {
                return Observed.of(source);
            }
        }
        throw new Refused(new Problem("\"" + text + "\" is no power source", Place.named(StartReadings.POWER), "wall or battery", NearestWord.of(word, SOURCES),
                "Say wall (w) or battery (b)."));
    }

    private static Refused refused(Ask ask, String what, String expected) {
        return new Refused(Problem.of(what, Place.named(name(ask)), expected, "Read it again; Enter alone says it was not read."));
    }

    /** Air temperature that the plan gives the session of a position, °C. */
    static OptionalDouble plannedAir(Plan plan, Position position) {
        return plan.sessionFactor().flatMap(factor -> factor.levels().stream()
                .filter(level -> level.name().equals(position.levels().get(factor.name()))).findFirst()).flatMap(coldproof.plan.Level::air)
                .map(Celsius::degrees).map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }

    /** What is not as planned at the start of a session. */
    static List<String> sessionDeviations(Plan plan, Position position, Map<String, Observed> readings) {
        List<String> deviations = new ArrayList<>();
        OptionalDouble planned = plannedAir(plan, position);
        OptionalDouble read = Optional.ofNullable(readings.get(AIR)).map(Observed::amount).orElse(OptionalDouble.empty());
        if (planned.isPresent() && read.isPresent() && Math.abs(planned.getAsDouble() - read.getAsDouble()) > AIR_TOLERANCE_KELVINS) {
            deviations.add(String.format(Locale.ROOT, "session %d: air at %.1f °C, planned %.1f °C", position.session(), read.getAsDouble(), planned.getAsDouble()));
        }
        return deviations;
    }
}
