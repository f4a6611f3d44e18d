package coldproof.job;

import coldproof.files.table.Table;
import coldproof.files.table.TableReader;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.noise.NoiseReading;
import coldproof.reason.noise.NoiseTrial;
import coldproof.reason.sizing.PilotAdvice;
import coldproof.reason.sizing.PilotSearch;
import coldproof.study.Trial;
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
        for (Trial trial : study.state().trials()) {
            String session = sessions ? Integer.toString(trial.recorded().session()) : "";
            trials.add(new NoiseTrial(condition(trial.recorded().levels()), session, trial.score()));
        }
        return trials;
    }

    private static String condition(Map<String, String> levels) {
        return String.join("\u0000", levels.values());
    }

    /**
     * The noise of a table.
     *
     * @param file the table
     * @param metric column of the score
     * @param session column of the session, if there are sessions
     * @param factors columns that make the condition
     * @throws Refused if the table, a column or a cell is wrong, or no condition was repeated
     */
    public static NoiseReading ofTable(Path file, String metric, Optional<String> session, List<String> factors) {
        Table table = TableReader.read(file);
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
        return NoiseReading.of(List.of(trials)).orElseThrow(() -> tooFew(file.toString()));
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
