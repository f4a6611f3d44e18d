package coldproof.face.console;

import coldproof.face.dialogue.PlanDialogue;
import coldproof.face.dialogue.VerbDesk;
import coldproof.job.LogJob;
import coldproof.job.Machine;
import coldproof.job.PlanJob;
import coldproof.job.ReadyPlans;
import coldproof.job.StudyOverview;
import coldproof.quantity.NearestWord;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.report.text.Harmless;
import coldproof.report.text.ProblemText;
import coldproof.report.text.Wrap;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Understands the lines of the console. Knows no terminal: the same lines do the same everywhere. */
final class Shell {
    /** Words of the console that are no verbs. */
    static final List<String> OWN = List.of("help", "status", "study", "guided", "ready", "quit");
    private static final int WRONG_INPUT = 2;
    private static final int FAILED = 1;
    private static final String DEMO_FOLDER = "coldproof-demo";
    private final VerbDesk desk;
    private final Machine machine;
    private final Talk talk;
    private final Set<String> seen = new LinkedHashSet<>();
    private Path folder;
    private int status;

    Shell(VerbDesk desk, Machine machine, Path folder, Talk talk) {
        this.desk = desk;
        this.machine = machine;
        this.folder = folder;
        this.talk = talk;
    }

    /** The folder of the study at hand. */
    Path folder() {
        return folder;
    }

    /** The status of the last line. */
    int status() {
        return status;
    }

    /** Shows where the study stands and what comes next. */
    void showHome() {
        StudyOverview overview = StudyOverview.of(folder);
        talk.out().print(HomeText.of(overview, next(overview), talk.columns()));
        talk.out().flush();
    }

    /** What {@link #showHome} shows of a study that nothing was done with yet. */
    static String home(VerbDesk desk, StudyOverview overview, int columns) {
        return HomeText.of(overview, Suggestion.of(overview, Set.of(), verbNames(desk)), columns);
    }

    private Suggestion next(StudyOverview overview) {
        return Suggestion.of(overview, seen, verbNames(desk));
    }

    private static Set<String> verbNames(VerbDesk desk) {
        Set<String> names = new LinkedHashSet<>();
        for (VerbDesk.Entry entry : desk.verbs()) {
            names.add(entry.name());
        }
        return names;
    }

    /**
     * Does what a line says.
     *
     * @return whether the console goes on
     */
    boolean execute(String line) {
        try {
            List<String> words = Words.of(line);
            return execute(words.isEmpty() ? next(StudyOverview.of(folder)).words() : words);
        } catch (Refused refused) {
            talk.out().print(ProblemText.of(refused.problems()));
            status = WRONG_INPUT;
            return true;
        } catch (RuntimeException unforeseen) {
            talk.out().println("Something unforeseen went wrong: " + Harmless.line(unforeseen.toString()));
            talk.out().println("What was recorded is on disk. Please report this with the line that led to it.");
            status = FAILED;
            return true;
        } finally {
            talk.out().flush();
        }
    }

    private boolean execute(List<String> words) {
        String first = words.get(0).toLowerCase(Locale.ROOT);
        status = 0;
        switch (first) {
            case "quit", "exit", "q" -> {
                return false;
            }
            case "help", "?", "h" -> help(words);
            case "status", "home" -> showHome();
            case "study", "cd" -> open(words);
            case "guided", "g" -> guided();
            case "ready", "r" -> ready();
            case "d" -> verb(List.of("demo"));
            default -> verb(words);
        }
        return true;
    }

    private void help(List<String> words) {
        if (words.size() > 1 && !OWN.contains(words.get(1))) {
            status = desk.run(List.of("help", words.get(1)), talk.out(), talk.out(), talk.columns());
            return;
        }
        talk.out().println("Verbs, in the order of the job; help VERB explains one, with an example:");
        desk.verbs().forEach(entry -> row(entry.name(), entry.purpose()));
        talk.out().println("In the console only:");
        row("guided", "be asked, step by step, for a plan");
        row("ready", "start from a ready plan");
        row("status", "where the study stands and what comes next");
        row("study DIR", "open the study in another folder");
        row("quit", "leave; everything recorded stays");
    }

    private void row(String name, String purpose) {
        String row = String.format(Locale.ROOT, "  %-10s %s", name, purpose);
        talk.out().println(row.length() <= talk.columns() ? row : row.substring(0, talk.columns() - 3) + "...");
    }

    private void open(List<String> words) {
        if (words.size() != 2) {
            throw new Refused(Problem.of(words.size() < 2 ? "no folder is given" : "more than one folder is given", Place.named("study"), "one folder",
                    "Write: study DIR, in quotes if its name has spaces."));
        }
        Path there = path(words.get(1));
        if (!Files.isDirectory(folder.resolve(there))) {
            throw new Refused(new Problem("there is no such folder", Place.named(there.toString()), "a folder", NearestWord.of(words.get(1), neighbours()),
                    "Check the name."));
        }
        move(folder.resolve(there).normalize());
        showHome();
    }

    private void move(Path there) {
        folder = there;
        seen.clear();
    }

    private List<String> neighbours() {
        try (Stream<Path> children = Files.list(folder)) {
            return children.filter(Files::isDirectory).map(child -> child.getFileName().toString()).limit(1000).toList();
        } catch (java.io.IOException | java.io.UncheckedIOException unreadable) {
            return List.of(); // only a hint is lost: the refusal itself stands
        }
    }

    private static Path path(String text) {
        try {
            return Path.of(text);
        } catch (InvalidPathException broken) {
            throw new Refused(Problem.of("\"" + text + "\" is no file name here", Place.named("study"), "a folder", "Correct the name."));
        }
    }

    private void guided() {
        Optional<Path> written = PlanDialogue.run(folder, talk);
        talk.out().println(written.map(file -> "Wrote " + file).orElse("Nothing was written."));
        seen.clear();
        showHome();
    }

    private void ready() {
        List<String> names = ReadyPlans.names();
        for (int i = 0; i < names.size(); i++) {
            talk.out().println("  " + (i + 1) + "  " + names.get(i));
        }
        Optional<String> said = talk.ask("which plan, number or name (Enter: none)> ");
        if (said.isEmpty() || said.get().isBlank()) {
            return;
        }
        String word = said.get().strip();
        String name = word.matches("[1-9]") && Integer.parseInt(word) <= names.size() ? names.get(Integer.parseInt(word) - 1) : word;
        String text = ReadyPlans.text(name);
        Optional<String> where = talk.ask("folder for the study (Enter: this one)> ");
        Path there = folder.resolve(path(where.orElse("").strip())).normalize();
        Path file = PlanJob.create(there, text);
        talk.out().println("Wrote " + file + ": change in it what is different at your bench.");
        move(there);
        showHome();
    }

    private void verb(List<String> words) {
        String verb = words.get(0);
        Set<String> verbs = verbNames(desk);
        if (!verbs.contains(verb)) {
            List<String> known = new ArrayList<>(verbs);
            known.addAll(OWN);
            throw new Refused(new Problem("there is no verb \"" + (verb.length() > 60 ? verb.substring(0, 60) + "..." : verb) + "\"", Place.named("console"),
                    "one of: " + String.join(", ", known), verb.length() > 60 ? List.of() : NearestWord.of(verb, known), "See: help"));
        }
        if (words.equals(List.of("plan", "new")) || words.equals(List.of("plan", "new", "--guided"))) {
            guided();
            return;
        }
        if (words.equals(List.of("log"))) {
            log();
            return;
        }
        talk.beforeVerb();
        status = desk.run(inStudy(words), talk.out(), talk.out(), talk.columns());
        after(words);
    }

    private void log() {
        try (LogJob log = LogJob.open(folder.toAbsolutePath(), machine)) {
            talk.out().print(ProblemText.of(log.problems()));
            talk.log(log);
        }
        showHome();
    }

    /** The verb's words with the study at hand, unless another is named. Arguments after {@code --} stay behind it. */
    private List<String> inStudy(List<String> words) {
        int end = words.indexOf("--");
        List<String> own = end < 0 ? words : words.subList(0, end);
        if (own.contains("--study") || own.contains("--help") || own.contains("-h")) {
            return words;
        }
        List<String> all = new ArrayList<>(words);
        all.addAll(1, List.of("--study", folder.toString().isEmpty() ? "." : folder.toString()));
        return all;
    }

    private void after(List<String> words) {
        String verb = words.get(0);
        StudyOverview.Stage before = StudyOverview.of(folder).stage();
        if (verb.equals("demo") && status == 0 && before == StudyOverview.Stage.NO_STUDY) {
            move(path(words.size() > 1 ? words.get(words.size() - 1) : DEMO_FOLDER));
            showHome();
            return;
        }
        if (verb.equals("plan") && words.size() > 1 && (words.get(1).equals("new") || words.get(1).equals("freeze"))) {
            seen.clear();
        }
        if (status != WRONG_INPUT) {
            seen.add(words.size() > 1 && !words.get(1).startsWith("-") ? verb + " " + words.get(1) : verb);
            Suggestion next = next(StudyOverview.of(folder));
            talk.out().print(Wrap.at(talk.columns(), "Next: " + next.line() + " (Enter): " + Harmless.line(next.why())));
        }
    }
}
