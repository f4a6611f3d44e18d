package coldproof.plan;

import coldproof.quantity.Celsius;
import java.util.Optional;

/**
 * A setting of a factor.
 *
 * @param name such as "chilled"
 * @param setting what is set, as written, such as "-9 °C"; empty where the name says it all
 * @param air the air temperature, where the setting is a temperature
 */
public record Level(String name, String setting, Optional<Celsius> air) {
    /** A level that is only a name. */
    public static Level named(String name) {
        return new Level(name, "", Optional.empty());
    }
}
