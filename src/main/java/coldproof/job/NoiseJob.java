package coldproof.job;

import coldproof.files.table.Table;
import coldproof.files.table.TableReader;
import coldproof.plan.NoiseAssumption;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.noise.NoiseReading;
import coldproof.reason.noise.NoiseTrial;
import coldproof.reason.sizing.PilotAdvice;
import coldproof.reason.sizing.PilotSearch;
import coldproof.study.Trial;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Learns the noise from studies, pilots or a table. */
public final class NoiseJob {
    private NoiseJob() {}

    /**
     * The noise of one or more studies of the same device and workload.
     *
     * @throws Refused if a study cannot be read, or no condition was repeated
     */
    public static NoiseReading ofStudies(List<Path> studies) {
        List<List<NoiseTrial>> all = new ArrayList<>();
        for (Path study : studies) {
            all.add(trials(StudyView.read(study)));
        }
        return NoiseReading.of(all).orElseThrow(() -> tooFew(studies.get(0).toString()));
    }

    private static List<NoiseTrial> trials(StudyView study) {
        boolean sessions = study.plan().layout().kind() == coldproof.plan.Layout.Kind.SESSIONS;
        List<NoiseTrial> trials = new ArrayList<>();
        for (Trial trial : study.scored()) {
            String session = sessions ? Integer.toString(trial.recorded().session()) : "";
            trials.add(new NoiseTrial(condition(trial.recorded().levels()), session, trial.score()));
        }
        return trials;
    }

    private static String condition(Map<String, String> levels) {
        return String.join("\u0000", levels.values());
    }

    /**
     * The noise of one or more tables of the same device and workload, pooled.
     *
     * @param files the tables
     * @param metric column of the score
     * @param session column of the session, if there are sessions
     * @param factors columns that make the condition
     * @throws Refused if a table, a column or a cell is wrong, or no condition was repeated
     */
    public static NoiseReading ofTables(List<Path> files, String metric, Optional<String> session, List<String> factors) {
        List<List<NoiseTrial>> all = new ArrayList<>();
        files.forEach(file -> all.add(trials(TableReader.read(file), metric, session, factors)));
        return NoiseReading.of(all).orElseThrow(() -> tooFew(files.get(0).toString()));
    }

    private static List<NoiseTrial> trials(Table table, String metric, Optional<String> session, List<String> factors) {
        double[] scores = table.numbers(table.column(metric, "--metric"));
        int sessionColumn = session.isPresent() ? table.column(session.get(), "--session") : -1;
        List<Integer> columns = factors.stream().map(name -> table.column(name, "--factor")).toList();
        List<NoiseTrial> trials = new ArrayList<>();
        for (int i = 0; i < scores.length; i++) {
            Table.Row row = table.rows().get(i);
            if (!(scores[i] > 0)) {
                throw new Refused(Problem.of("the score is " + scores[i], table.place(row, table.column(metric, "--metric")), "a number above 0",
                        "Correct the cell, or take the row out."));
            }
            String condition = String.join("\u0000", columns.stream().map(row::text).toList());
            trials.add(new NoiseTrial(condition, sessionColumn < 0 ? "" : row.text(sessionColumn), scores[i]));
        }
        return trials;
    }

    /**
     * The noise of earlier work, to be carried into a verdict: study folders, and tables with the columns of the question; pooled.
     *
     * @param sources one or more
     * @param factors columns that make the condition, in tables that have them
     * @throws Refused if one cannot be read, or no condition was repeated
     */
    public static NoiseAssumption carried(List<Path> sources, Optional<String> metric, Optional<String> session, List<String> factors) {
        List<List<NoiseTrial>> all = new ArrayList<>();
        for (Path source : sources) {
            if (Files.isDirectory(source)) {
                all.add(trials(StudyView.read(source)));
            } else {
                Table table = TableReader.read(source);
                String column = metric.orElseThrow(() -> new Refused(Problem.of(source + " is a table, but it is not said which column is the score",
                        Place.named("--carry-noise"), "a study folder, or --metric COLUMN beside it", "Give --metric.")));
                all.add(trials(table, column, session.filter(table.columns()::contains), factors.stream().filter(table.columns()::contains).toList()));
            }
        }
        NoiseReading noise = NoiseReading.of(all).orElseThrow(() -> tooFew(sources.get(0).toString()));
        String from = String.join(", ", sources.stream().map(source -> source.getFileName() == null ? source.toString() : source.getFileName().toString()).toList());
        return noise.assumption(from);
    }

    /**
     * What a pilot is worth to a study.
     *
     * @throws Refused if its plan says nothing about noise
     */
    public static PilotAdvice advice(StudyView study) {
        return PilotSearch.of(study.plan(), study.sheet());
    }

    private static Refused tooFew(String where) {
        return new Refused(Problem.of("no condition was repeated in the same session, so run-to-run noise cannot be seen", Place.named(where),
                "at least two trials of one condition in one sitting", "Run a pilot: three sessions of four baseline trials tell most."));
    }
}
