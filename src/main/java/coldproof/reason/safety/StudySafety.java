package coldproof.reason.safety;

import coldproof.physics.DeviceClass;
import coldproof.physics.Site;
import java.util.List;
import java.util.Optional;

/**
 * What a study says about safety: its rules, and what else judging needs to know.
 *
 * @param rules the rules in force
 * @param loosened rules that ask for less than the ones that come with coldproof, with the reasons
 * @param device the class of device
 * @param site where the test air is
 * @param known readings that hold throughout, such as the battery's energy
 */
public record StudySafety(List<SafetyRule> rules, List<Loosened> loosened, DeviceClass device, Optional<Site> site, SafetyScene known) {
    /**
     * A rule that was loosened.
     *
     * @param rule its name
     * @param reason why, never blank
     */
    public record Loosened(String rule, String reason) {}

    /** Copies. */
    public StudySafety {
        rules = List.copyOf(rules);
        loosened = List.copyOf(loosened);
    }

    /** A study that changes nothing. */
    public static StudySafety unchanged(List<SafetyRule> rules) {
        return new StudySafety(rules, List.of(), DeviceClass.LAPTOP, Optional.empty(), SafetyScene.NOTHING);
    }
}
