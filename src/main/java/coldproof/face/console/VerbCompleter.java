package coldproof.face.console;

import coldproof.face.dialogue.VerbDesk;
import coldproof.job.StudyOverview;
import coldproof.job.StudyView;
import coldproof.job.TableColumns;
import coldproof.plan.Factor;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.jline.reader.Candidate;
import org.jline.reader.Completer;
import org.jline.reader.LineReader;
import org.jline.reader.ParsedLine;

/** Completes verbs, options, the words and levels that an option takes, column names of the table named in the line, and file names. */
final class VerbCompleter implements Completer {
    private final VerbDesk desk;
    private final Supplier<Path> folder;

    VerbCompleter(VerbDesk desk, Supplier<Path> folder) {
        this.desk = desk;
        this.folder = folder;
    }

    @Override
    public void complete(LineReader reader, ParsedLine line, List<Candidate> candidates) {
        List<String> words = line.words();
        if (line.wordIndex() == 0) {
            desk.verbs().forEach(entry -> candidates.add(candidate(entry.name(), entry.purpose())));
            Shell.OWN.forEach(word -> candidates.add(candidate(word, "")));
            return;
        }
        String verb = words.get(0);
        List<VerbDesk.Option> options = desk.options(verb);
        Optional<VerbDesk.Option> before = named(options, words.get(line.wordIndex() - 1)).filter(option -> !option.label().isEmpty());
        if (verb.equals("help")) {
            desk.verbs().forEach(entry -> candidates.add(candidate(entry.name(), entry.purpose())));
        } else if (verb.equals("study")) {
            files(line, candidates);
        } else if (before.isPresent()) {
            values(before.get().label(), line, candidates);
        } else {
            options.stream().filter(option -> !option.name().isEmpty()).forEach(option -> candidates.add(candidate(option.name(), option.purpose())));
            options.stream().filter(option -> option.name().isEmpty()).forEach(argument -> values(argument.label(), line, candidates));
        }
    }

    private static Optional<VerbDesk.Option> named(List<VerbDesk.Option> options, String name) {
        return options.stream().filter(option -> option.name().equals(name) && !name.isEmpty()).findFirst();
    }

    private void values(String label, ParsedLine line, List<Candidate> candidates) {
        if (label.contains("|")) {
            for (String word : label.split("\\|")) {
                candidates.add(candidate(word, ""));
            }
        } else if (label.equals("FILE") || label.equals("DIR") || label.equals("FOLDER") || label.equals("STUDY") || label.equals("COMMAND")) {
            files(line, candidates);
        } else if (label.startsWith("COL")) {
            columns(line.words()).forEach(column -> candidates.add(candidate(column, "")));
        } else if (label.equals("LEVEL")) {
            levels().forEach(level -> candidates.add(candidate(level, "")));
        }
    }

    private static void files(ParsedLine line, List<Candidate> candidates) {
        for (String name : FileNames.from(line.word())) {
            candidates.add(new Candidate(name, name, null, null, null, null, !name.endsWith("/")));
        }
    }

    private static List<String> columns(List<String> words) {
        int at = words.indexOf("--trials");
        if (at < 0 || at + 1 >= words.size()) {
            return List.of();
        }
        try {
            return TableColumns.of(Path.of(words.get(at + 1)));
        } catch (InvalidPathException noName) {
            return List.of(); // half a name: nothing to offer yet
        }
    }

    private Set<String> levels() {
        Set<String> levels = new LinkedHashSet<>();
        Optional<StudyView> study = StudyOverview.of(folder.get()).study();
        study.ifPresent(view -> {
            for (Factor factor : view.plan().factors()) {
                levels.addAll(factor.levelNames());
            }
        });
        return levels;
    }

    private static Candidate candidate(String word, String purpose) {
        return new Candidate(word, word, null, purpose.isEmpty() ? null : purpose, null, null, true);
    }
}
