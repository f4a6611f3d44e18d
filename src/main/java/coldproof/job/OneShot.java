package coldproof.job;

import coldproof.plan.Position;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.checklist.Ask;
import coldproof.reason.checklist.Question;
import coldproof.report.text.ChecklistText;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** One entry at the bench given as options: the answers that a person would have typed are given to the same checklist. */
public final class OneShot {
    private static final List<String> COMMANDS = List.of("undo", "skip", "note", "pause", "abort");

    private static final List<String> WITH_TEXT = List.of("skip", "note", "abort");

    private static final Map<Ask, String> READING_OPTIONS = Map.of(Ask.DIE, "--die", Ask.BATTERY, "--battery", Ask.POWER, "--power", Ask.SOAK, "--soak",
            Ask.SAFETY, "--acknowledged-by", Ask.AIR, "--air", Ask.WIND, "--wind", Ask.HUMIDITY, "--humidity", Ask.PRECIPITATION, "--precipitation",
            Ask.DEVICE, "--device-temperature");

    private OneShot() {}

    /**
     * One thing to record.
     *
     * @param word {@code score} or a command
     * @param text what was given with it
     * @param readings start conditions and soak given with a score, as typed
     */
    public record Entry(String word, String text, Map<Ask, String> readings) {}

    /**
     * The entries that the options ask for, in the order to record them.
     *
     * @param option gives the value of an option such as {@code --score}
     */
    public static List<Entry> entries(Function<String, Optional<String>> option) {
        List<Entry> entries = new ArrayList<>();
        COMMANDS.forEach(command -> option.apply("--" + command).ifPresent(text -> entries.add(command(command, text))));
        Map<Ask, String> readings = new LinkedHashMap<>();
        READING_OPTIONS.forEach((ask, name) -> option.apply(name).ifPresent(text -> readings.put(ask, text)));
        Optional<String> score = option.apply("--score");
        if (score.isEmpty() && !readings.isEmpty()) {
            throw new Refused(Problem.of("a reading is given without a score", Place.named("log"), "--score with it", "Add --score, or run log without options."));
        }
        score.ifPresent(text -> entries.add(entries.size() - after(entries), new Entry("score", text, readings)));
        return entries;
    }

    private static Entry command(String word, String text) {
        if (text.isBlank() && WITH_TEXT.contains(word)) {
            throw new Refused(Problem.of("it says nothing", Place.named("--" + word), word.equals("note") ? "the note" : "the reason", "Nothing was recorded. Write it behind the option."));
        }
        return new Entry(word, text, Map.of());
    }

    /** Pausing and aborting come after the score. */
    private static int after(List<Entry> entries) {
        return (int) entries.stream().filter(entry -> entry.word().equals("pause") || entry.word().equals("abort")).count();
    }

    /**
     * Records them.
     *
     * @return what to tell the person
     * @throws Refused at the first that cannot be recorded; those before it are
     */
    public static List<String> run(LogJob log, List<Entry> entries) {
        List<String> said = new ArrayList<>();
        for (Entry entry : entries) {
            if (entry.word().equals("score")) {
                score(log, entry, said);
            } else {
                said.addAll(log.answer((entry.word() + " " + entry.text()).strip()).said());
            }
        }
        return said;
    }

    private static void score(LogJob log, Entry entry, List<String> said) {
        while (log.question().ask() != Ask.SCORE) {
            Question question = log.question();
            if (question.ask() == Ask.FINISHED) {
                throw new Refused(Problem.of("every trial of the run sheet is settled", Place.named("--score"), "a trial still to run",
                        "The score was not recorded. To change the last one, run: coldproof log --undo REASON"));
            }
            said.addAll(log.answer(answer(question, entry)).said());
        }
        Position position = log.question().step().position().orElseThrow();
        said.addAll(log.answer(entry.text()).said());
        if (log.question().ask() == Ask.CONFIRM_SCORE) {
            said.addAll(ChecklistText.instructions(log.question(), log.view().plan()).stream().map(line -> "look: trial " + position.number() + ": "
                    + line.substring(0, line.indexOf(")") + 2)).toList());
            said.addAll(log.answer("y").said());
            said.add("If it was a slip, take it back with: coldproof log --undo slip");
        }
    }

    private static String answer(Question question, Entry entry) {
        String unread = question.ask() == Ask.SOAK ? LogJob.UNKNOWN : "";
        return entry.readings().getOrDefault(question.ask(), unread);
    }
}
