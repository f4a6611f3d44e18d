package coldproof.job;

import coldproof.physics.Site;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.QuantityText;
import coldproof.quantity.Refused;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZonedDateTime;
import java.util.Locale;

/** Places on the earth and moments as people write them. */
public final class PlaceText {
    private PlaceText() {}

    /**
     * Reads {@code 47.61,12.32}, {@code 47.61 12.32} or {@code 33.9S 18.4E}; north and east are positive.
     *
     * @param where the option or question it was given to
     * @throws Refused if it is no place on the earth
     */
    public static Site read(String where, String text) {
        String[] parts = text.strip().contains(" ") || text.contains(";") ? text.strip().split("[;\\s]+") : text.strip().split(",");
        try {
            if (parts.length == 2) {
                return new Site(degrees(parts[0], "N", "S"), degrees(parts[1], "E", "W"));
            }
        } catch (IllegalArgumentException wrong) {
            throw noPlace(where, text, wrong);
        }
        throw noPlace(where, text, null);
    }

    private static double degrees(String text, String positive, String negative) {
        String clean = text.strip().replaceAll("[,°]$", "").toUpperCase(Locale.ROOT);
        boolean turned = clean.endsWith(negative);
        String number = turned || clean.endsWith(positive) ? clean.substring(0, clean.length() - 1) : clean;
        return (turned ? -1 : 1) * QuantityText.number(number.replace("°", ""));
    }

    private static Refused noPlace(String where, String text, IllegalArgumentException because) {
        Refused refused = new Refused(Problem.of("\"" + text + "\" is no place on the earth", Place.named(where),
                "latitude and longitude in degrees, north and east positive, such as 47.61,12.32", "Correct it."));
        if (because != null) {
            refused.initCause(because);
        }
        return refused;
    }

    /**
     * Reads {@code 15:30} (today), {@code 2026-01-14T15:30} or the same with an offset.
     *
     * @throws Refused if it is no time
     */
    public static Instant moment(String where, String text, Machine machine) {
        ZonedDateTime now = ZonedDateTime.now(machine.wall());
        String clean = text.strip().replace(' ', 'T');
        try {
            if (!clean.contains("T")) {
                return now.with(LocalTime.parse(clean.length() == 4 ? "0" + clean : clean)).toInstant();
            }
            return clean.matches(".*(Z|[+-]\\d\\d:?\\d\\d)$") ? OffsetDateTime.parse(clean).toInstant()
                    : LocalDateTime.parse(clean).atZone(now.getZone()).toInstant();
        } catch (DateTimeException wrong) {
            Refused refused = new Refused(Problem.of("\"" + text + "\" is no time", Place.named(where), "such as 15:30 or 2026-01-14T15:30", "Correct it."));
            refused.initCause(wrong);
            throw refused;
        }
    }
}
