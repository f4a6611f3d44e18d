package coldproof.face.cli;

import coldproof.job.QuickStartJob;
import coldproof.job.demo.PassingStudy;
import coldproof.report.json.JsonObject;
import java.io.BufferedReader;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.Writer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;

/**
 * {@code warm}: makes the archive of classes that lets the program start quickly. With {@code --walk}, which its maker calls, it walks the usual
 * paths and its answers go nowhere.
 */
final class WarmVerb implements Verb {
    /** The option that walks. */
    static final String WALK = "--walk";
    private static final String[][] WALKS = {
        {"--help"}, {"--version"}, {"verdict", "--help"}, {"verdct"}, {"verdict", "--study", "no such folder", "--json"},
        {"runs", "--layout", "sessions", "--effect", "3%", "--noise", "1.5%", "--session-noise", "0.8%"},
        {"runs", "--layout", "alternating", "--effect", "3%", "--noise", "1.5%", "--json"},
        {"runs", "--layout", "paired", "--claim", "same", "--noise", "1.5%", "--json"},
        {"caution", "--air", "-9C", "--humidity", "70%", "--wind", "3m/s", "--indoors", "21C", "--indoor-humidity", "45%"},
        {"caution", "--air", "-9C", "--humidity", "70%", "--json"},
    };
    /** Verbs that look at the study of the demonstration. */
    private static final String[][] STUDY_WALKS = {
        {"plan", "check"}, {"plan", "show"}, {"runs"}, {"schedule"}, {"noise"}, {"verdict"}, {"verdict", "--json"}, {"limiter"}, {"limiter", "--json"},
        {"report"}, {"journal", "check"}, {"log"},
    };

    /** A study that begins. */
    private static final String[][] FRESH_WALKS = {
        {"plan", "new", "--from", "chilled-air"}, {"plan", "check"}, {"plan", "freeze"}, {"schedule"}, {"plan", "show"}, {"log"}, {"verdict"}, {"verdict", "--json"},
    };

    @Override
    public void describe(CommandSpec spec) {
        Options.hiddenFlag(spec, WALK, "Walk the usual paths.");
    }

    @Override
    public int run(Invocation call) {
        if (call.flag(WALK)) {
            walk();
            return ExitStatus.DONE;
        }
        QuickStartJob.Made made = QuickStartJob.make(List.of("warm", WALK));
        call.answer(() -> new JsonObject().put("archive", made.archive().toString()).put("made", made.isMade()), () -> made.isMade() ? "Wrote " + made.archive()
                + ": starting is quick now.\n" : "This Java makes no archive of classes. Everything works without, only slower to start.\n");
        return ExitStatus.DONE;
    }

    private static void walk() {
        PrintWriter nowhere = new PrintWriter(Writer.nullWriter());
        Streams quiet = new Streams(new BufferedReader(new StringReader("")), nowhere, nowhere, false, 80, false);
        CommandLineFace face = new CommandLineFace(quiet);
        for (String[] words : WALKS) {
            face.run(words);
        }
        try (PassingStudy study = PassingStudy.make()) {
            walk(face, STUDY_WALKS, study.folder());
            walk(face, FRESH_WALKS, study.folder().resolveSibling("fresh"));
            face.run("trace", study.folder().resolve("traces").resolve("trial-001.csv").toString());
        }
    }

    private static void walk(CommandLineFace face, String[][] walks, Path study) {
        for (String[] words : walks) {
            List<String> all = new ArrayList<>(Arrays.asList(words));
            all.addAll(List.of("--study", study.toString()));
            face.run(all.toArray(String[]::new));
        }
    }
}
