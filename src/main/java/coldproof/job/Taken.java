package coldproof.job;

import coldproof.quantity.Dimension;
import coldproof.quantity.NearestWord;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.QuantityText;
import coldproof.quantity.QuantityText.Bare;
import coldproof.quantity.Refused;
import coldproof.reason.safety.Reading;
import coldproof.reason.safety.SafetyScene;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A reading as the person gave it.
 *
 * @param reading which
 * @param place where it was given: the option or the question
 * @param text what was written
 */
public record Taken(Reading reading, String place, String text) {
    /**
     * The scene that these readings make.
     *
     * @throws Refused with every reading that cannot be read or cannot be true
     */
    public static SafetyScene scene(List<Taken> taken) {
        List<Problem> problems = new ArrayList<>();
        SafetyScene scene = SafetyScene.NOTHING;
        for (Taken one : taken) {
            scene = one.onto(scene, problems);
        }
        if (!problems.isEmpty()) {
            throw new Refused(problems);
        }
        return scene;
    }

    private SafetyScene onto(SafetyScene scene, List<Problem> problems) {
        if (reading.dimension().isEmpty()) {
            if (reading.words().contains(text)) {
                return scene.with(reading, text);
            }
            problems.add(new Problem("\"" + text + "\" is not a word for " + reading.word(), Place.named(place),
                    "one of: " + String.join(", ", reading.words()), NearestWord.of(text, reading.words()), "Correct the word."));
            return scene;
        }
        Dimension dimension = reading.dimension().get();
        double number;
        try {
            number = QuantityText.read(text, dimension, Bare.ALLOWED);
        } catch (QuantityText.Unreadable unreadable) {
            problems.add(Problem.of("\"" + text + "\" is " + unreadable.getMessage(), Place.named(place), dimension.expected(),
                    "Correct the value of " + place + "."));
            return scene;
        }
        if (number >= reading.least() && number <= reading.most()) {
            return scene.with(reading, number);
        }
        problems.add(outside(number, dimension));
        return scene;
    }

    private Problem outside(double number, Dimension dimension) {
        String unit = dimension.unit();
        return Problem.of(reading.word() + " " + shown(number) + " " + unit + " cannot be", Place.named(place),
                "from " + shown(reading.least()) + " to " + shown(reading.most()) + " " + unit, remedy(number, dimension));
    }

    private String remedy(double number, Dimension dimension) {
        double meant = (number - 32) / 1.8;
        if (dimension == Dimension.TEMPERATURE && number > reading.most() && meant <= reading.most()) {
            return "If it was " + shown(number) + " °F, which is " + shown(meant) + " °C, write " + place + " " + shown(number) + "F. Else read it again.";
        }
        return switch (reading) {
            case HUMIDITY, ROOM_HUMIDITY -> number < 1
                    ? "No air is that dry for a hygrometer: the sensor is broken, iced or not connected. Measure again."
                    : "Above 100 % the sensor is wet or off. Let it dry and measure again; in fog give 100 %.";
            case AIR -> "Colder or hotter air was never measured on earth. Check thermometer and unit.";
            default -> "Check the instrument and the unit of " + place + ".";
        };
    }

    private static String shown(double number) {
        String text = String.format(Locale.ROOT, "%.1f", number);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }
}
