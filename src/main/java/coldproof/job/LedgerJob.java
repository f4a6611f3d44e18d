package coldproof.job;

import coldproof.files.ledger.LedgerReader;
import coldproof.plan.Layout;
import coldproof.quantity.NearestWord;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.ledger.Ledger;
import coldproof.reason.ledger.LedgerDevice;
import coldproof.reason.ledger.LedgerFigure;
import coldproof.reason.ledger.LedgerSheet;
import coldproof.reason.ledger.LedgerWorkload;
import coldproof.reason.ledger.Ledgers;
import coldproof.report.page.LedgerPage;
import coldproof.study.Trial;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Sets devices side by side, from a ledger file and the studies that it names. */
public final class LedgerJob {
    private final Path folder;
    private final Map<Path, Set<String>> shown = new LinkedHashMap<>();

    private LedgerJob(Path folder) {
        this.folder = folder;
    }

    /**
     * A comparison of devices.
     *
     * @param ledger the devices side by side
     * @param studies folders of the studies whose own change it shows, as where one stands in it twice, once for each level that it compares
     */
    public record Read(Ledger ledger, List<Path> studies) {
        /** Copies. */
        public Read {
            studies = List.copyOf(studies);
        }
    }

    /**
     * Reads a ledger and compares.
     *
     * @param reference the device to compare with; empty: as the file says
     * @throws Refused if the file or a study it names is wrong
     */
    public static Read of(Path file, Optional<String> reference) {
        LedgerJob job = new LedgerJob(file.toAbsolutePath().getParent());
        LedgerSheet sheet = LedgerReader.read(file.toString(), TextFile.read(file, "the ledger"), job::figure);
        Ledger ledger = Ledgers.compare(reference.map(name -> withReference(sheet, name)).orElse(sheet));
        return new Read(ledger, job.shown.entrySet().stream().filter(study -> study.getValue().size() > 1).map(Map.Entry::getKey).toList());
    }

    /** Writes into the studies whose change a ledger shows that it was looked at, and gives what to tell the person; call it before it is shown. */
    public static List<String> looks(Read read, Machine machine) {
        List<String> said = new ArrayList<>();
        for (Path study : read.studies()) {
            LookRecord.ofAllTrials(study, machine).forEach(look -> said.add(study + ": " + look));
        }
        return said;
    }

    /**
     * Writes a ledger as a page, over the one before.
     *
     * @throws Refused if the file cannot be written
     */
    public static void write(Ledger ledger, Path file) {
        ReportJob.save(file, ReportJob.Format.HTML.text(LedgerPage.of(ledger)));
    }

    private static LedgerSheet withReference(LedgerSheet sheet, String name) {
        List<String> names = sheet.devices().stream().map(LedgerDevice::name).toList();
        if (!names.contains(name)) {
            throw new Refused(new Problem("no device is called \"" + name + "\"", Place.named("--reference"), "one of: " + String.join(", ", names),
                    NearestWord.of(name, names), "Correct the word."));
        }
        return new LedgerSheet(sheet.title(), name, sheet.level(), sheet.currency(), sheet.simulated(), sheet.workloads(), sheet.devices());
    }

    private LedgerFigure figure(String study, Map<String, String> levels, LedgerWorkload workload) {
        StudyView view;
        try {
            view = StudyView.read(folder.resolve(study));
        } catch (InvalidPathException broken) {
            throw refused("that is no folder name here", "the folder of a study", "Correct the name.");
        }
        if (!view.plan().metric().unit().equals(workload.unit()) || view.plan().metric().better() != workload.better()) {
            throw refused("it measures " + view.plan().metric().name() + " in " + view.plan().metric().unit() + ", " + view.plan().metric().better().word() + " is better",
                    workload.unit() + ", " + workload.better().word() + " is better", "Name another study, or correct the workload.");
        }
        levels.forEach((factor, level) -> requireLevel(view, factor, level));
        List<Trial> trials = view.scored().stream().filter(trial -> trial.recorded().levels().entrySet().containsAll(levels.entrySet())).toList();
        if (trials.isEmpty()) {
            throw refused("no trial of it has " + levels, "a condition that was run", "Correct the condition, or leave it out for all trials.");
        }
        String all = ""; // no level: the figure is of them all, and beside that of one tells the others
        shown.computeIfAbsent(view.folder().toAbsolutePath().normalize(), any -> new HashSet<>()).add(levels.getOrDefault(view.plan().compare().factor(), all));
        return figure(view, study, trials);
    }

    private static void requireLevel(StudyView view, String factor, String level) {
        List<String> factors = view.plan().factors().stream().map(each -> each.name()).toList();
        if (!factors.contains(factor)) {
            throw new Refused(new Problem("no factor of it is called \"" + factor + "\"", Place.named("condition"), "one of: " + String.join(", ", factors),
                    NearestWord.of(factor, factors), "Correct the word."));
        }
        List<String> names = view.plan().factors().stream().filter(each -> each.name().equals(factor)).findFirst().orElseThrow().levelNames();
        if (!names.contains(level)) {
            throw new Refused(new Problem("no level of " + factor + " is called \"" + level + "\"", Place.named("condition"), "one of: " + String.join(", ", names),
                    NearestWord.of(level, names), "Correct the word."));
        }
    }

    /** Sessions are what repeats where the study has them: trials of one sitting share its air and its day. */
    private static LedgerFigure figure(StudyView view, String study, List<Trial> trials) {
        Map<Integer, List<Double>> bySession = new LinkedHashMap<>();
        boolean sessions = view.plan().layout().kind() == Layout.Kind.SESSIONS;
        trials.forEach(trial -> bySession.computeIfAbsent(sessions ? trial.recorded().session() : trial.position(), any -> new ArrayList<>())
                .add(Math.log(trial.score())));
        double[] logs = bySession.values().stream().mapToDouble(unit -> unit.stream().collect(Collectors.averagingDouble(log -> log))).toArray();
        String what = view.state().simulated().isPresent() ? ", simulated" : "";
        String date = trials.get(trials.size() - 1).recorded().startedAt().toLocalDate().toString();
        return LedgerFigure.ofLogs(logs, "own study " + study + what, date, true);
    }

    private static Refused refused(String what, String expected, String remedy) {
        return new Refused(Problem.of(what, Place.named("study"), expected, remedy));
    }
}
