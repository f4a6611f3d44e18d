package coldproof.reason.safety;

import coldproof.quantity.ConstantWord;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Parts of a session at the bench, in their order. */
public enum Phase {
    /** Getting ready, at home. */
    BEFORE("before"),
    /** Taking the device into the test air. */
    OUT("going out"),
    /** Trials run in the test air. */
    RUNNING("running"),
    /** Bringing the device back. */
    IN("coming in"),
    /** Switching it on, or opening it, after coming in. */
    POWER_ON("powering on"),
    /** Charging its battery. */
    CHARGING("charging"),
    /** Putting it away. */
    STORING("storing");

    private final String title;

    Phase(String title) {
        this.title = title;
    }

    /** As written in rules, options, journal and JSON. */
    public String word() {
        return ConstantWord.of(this);
    }

    /** As a heading. */
    public String title() {
        return title;
    }

    /** Whether the device is back in the room, still as cold or as hot as the test air unless someone measured it. */
    public boolean afterReturn() {
        return compareTo(IN) >= 0;
    }

    /** The words of all phases in order. */
    public static List<String> words() {
        return Arrays.stream(values()).map(Phase::word).toList();
    }

    /** The phase of a word. */
    public static Optional<Phase> of(String word) {
        return Arrays.stream(values()).filter(phase -> ConstantWord.is(phase, word)).findFirst();
    }
}
