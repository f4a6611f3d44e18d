package coldproof.trace;

import coldproof.quantity.NearestWord;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What a column of telemetry measures. */
public enum Channel {
    /** When the row was taken, in s. */
    TIME("time", TraceUnit.Kind.TIME, "timestamp"),
    /** A sensor on the die, in °C; there may be several, the hottest counts. */
    DIE_TEMPERATURE("die temperature", TraceUnit.Kind.TEMPERATURE, "die", "temperature"),
    /** A sensor on the board, in °C. */
    BOARD_TEMPERATURE("board temperature", TraceUnit.Kind.TEMPERATURE, "board"),
    /** A sensor on the outside, in °C. */
    SURFACE_TEMPERATURE("surface temperature", TraceUnit.Kind.TEMPERATURE, "surface"),
    /** Power into the package that does the work, in W. */
    PACKAGE_POWER("package power", TraceUnit.Kind.POWER, "power", "package"),
    /** Power into the whole device, in W. */
    SYSTEM_POWER("system power", TraceUnit.Kind.POWER, "system"),
    /** Clock of the part that does the work, in MHz. */
    CLOCK("clock", TraceUnit.Kind.CLOCK, "frequency"),
    /** Speed of a fan, in rpm. */
    FAN("fan speed", TraceUnit.Kind.ROTATION, "fan"),
    /** Share of the time the part that does the work is busy, in %. */
    UTILISATION("utilisation", TraceUnit.Kind.SHARE, "utilization", "load"),
    /** Charge of the battery, in %. */
    BATTERY_CHARGE("battery charge", TraceUnit.Kind.SHARE, "charge", "battery"),
    /** Temperature of the battery, in °C. */
    BATTERY_TEMPERATURE("battery temperature", TraceUnit.Kind.TEMPERATURE, "cell temperature"),
    /** Air around the device, in °C. */
    AMBIENT("ambient air", TraceUnit.Kind.TEMPERATURE, "ambient", "air");

    private final String label;
    private final TraceUnit.Kind kind;
    private final List<String> words;

    Channel(String label, TraceUnit.Kind kind, String... words) {
        this.label = label;
        this.kind = kind;
        List<String> all = new ArrayList<>(List.of(words));
        all.add(0, label);
        this.words = List.copyOf(all);
    }

    /** As people call it. */
    public String label() {
        return label;
    }

    /** What its unit measures. */
    public TraceUnit.Kind kind() {
        return kind;
    }

    /** The channel a person means, by its label or a short word for it, whatever case, with blanks, dashes or underscores or none. */
    public static Optional<Channel> named(String text) {
        String wanted = letters(text);
        for (Channel channel : values()) {
            for (String word : channel.words) {
                if (letters(word).equals(wanted)) {
                    return Optional.of(channel);
                }
            }
        }
        return Optional.empty();
    }

    /** Short words a person may write for a channel, for a message. */
    public static List<String> shortWords() {
        List<String> shortWords = new ArrayList<>();
        for (Channel channel : values()) {
            shortWords.add(channel.words.get(channel.label.indexOf(' ') > 0 ? 1 : 0));
        }
        return shortWords;
    }

    /** Words close to what a person wrote. */
    public static List<String> nearest(String text) {
        List<String> all = new ArrayList<>();
        for (Channel channel : values()) {
            all.addAll(channel.words);
        }
        return NearestWord.of(text, all);
    }

    private static String letters(String text) {
        StringBuilder letters = new StringBuilder();
        for (char c : text.toLowerCase(Locale.ROOT).toCharArray()) {
            if (Character.isLetter(c)) {
                letters.append(c);
            }
        }
        return letters.toString();
    }
}
