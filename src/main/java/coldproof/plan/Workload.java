package coldproof.plan;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a trial runs.
 *
 * @param instruction what the person does, in a sentence; empty where nothing was written
 * @param command program and arguments, where a program does it; empty list where not
 * @param commandByLevel program and arguments by level of the compared factor, where they differ
 * @param scorePattern regular expression with one group that finds the score in the output; none means the wall time is the score
 */
public record Workload(String instruction, List<String> command, Map<String, List<String>> commandByLevel, Optional<String> scorePattern) {
    /** Nothing written. */
    public static final Workload NONE = new Workload("", List.of(), Map.of(), Optional.empty());

    /** Copies. */
    public Workload {
        command = List.copyOf(command);
        commandByLevel = Collections.unmodifiableMap(new LinkedHashMap<>(commandByLevel));
    }
}
