package coldproof.reason.checklist;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What the person may say instead of an answer, at any step of the checklist: a word, its first letter, or the word with a reason. */
public enum Command {
    /** Take back the last trial or skip. */
    UNDO("undo", "u", "takes back the last trial"),
    /** Leave the trial out. */
    SKIP("skip", "s", "leaves this trial out, with the reason"),
    /** Remember a sentence. */
    NOTE("note", "n", "writes a note"),
    /** Stop, to go on later. */
    PAUSE("pause", "p", "stops for now; log goes on here, today or next week"),
    /** End the session for good. */
    ABORT("abort", "a", "ends this session for good, with the reason"),
    /** Go on in another file, when the study's own cannot be written. */
    ELSEWHERE("elsewhere", "e", "FILE: goes on there when the disk is full or gone"),
    /** Leave without a word in the journal. */
    QUIT("quit", "q", "leaves; everything recorded stays"),
    /** What can be said here. */
    HELP("help", "?", "shows these keys");

    private final String word;
    private final String key;
    private final String purpose;

    Command(String word, String key, String purpose) {
        this.word = word;
        this.key = key;
        this.purpose = purpose;
    }

    /** The whole word. */
    public String word() {
        return word;
    }

    /** The one key. */
    public String key() {
        return key;
    }

    /** What it does, in a line. */
    public String purpose() {
        return purpose;
    }

    /** All words. */
    public static List<String> words() {
        return Arrays.stream(values()).map(Command::word).toList();
    }

    /**
     * A command as said.
     *
     * @param command which
     * @param rest what followed it, may be empty
     */
    public record Said(Command command, String rest) {}

    /** The command that this line begins with: its letter alone, or its word with or without more. */
    public static Optional<Said> in(String line) {
        String text = line.strip();
        int space = text.indexOf(' ');
        String first = (space < 0 ? text : text.substring(0, space)).toLowerCase(Locale.ROOT);
        String rest = space < 0 ? "" : text.substring(space + 1).strip();
        for (Command command : values()) {
            if (first.equals(command.word) || first.equals(command.key)) {
                return Optional.of(new Said(command, rest));
            }
        }
        return Optional.empty();
    }
}
