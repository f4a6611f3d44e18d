package coldproof.job;

import coldproof.quantity.NearestWord;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The plans that come with coldproof, to start from. */
public final class ReadyPlans {
    private static final List<String> NAMES = List.of("chilled-air", "fan-alternating", "power-source-pairs", "fresh-paste", "background-load");

    private ReadyPlans() {}

    /** Their names, in the order to offer them. */
    public static List<String> names() {
        return NAMES;
    }

    /**
     * The text of a ready plan.
     *
     * @throws Refused if there is none of that name
     */
    public static String text(String name) {
        if (!NAMES.contains(name)) {
            throw new Refused(new Problem("there is no ready plan \"" + name + "\"", Place.named("--from"), "one of: " + String.join(", ", NAMES),
                    NearestWord.of(name, NAMES), "Correct the name."));
        }
        try (InputStream in = ReadyPlans.class.getResourceAsStream("/coldproof/plans/" + name + ".yaml")) {
            if (in == null) {
                throw new IllegalStateException("the ready plan " + name + " is missing from the program");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }
}
