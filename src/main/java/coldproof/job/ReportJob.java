package coldproof.job;

import coldproof.files.folder.StudyFolder;
import coldproof.files.journal.DiskTrouble;
import coldproof.quantity.ConstantWord;
import coldproof.quantity.Place;
import coldproof.quantity.Problem;
import coldproof.quantity.Refused;
import coldproof.reason.limiter.KnownLimits;
import coldproof.reason.limiter.LimiterTrial;
import coldproof.reason.limiter.PinnedChannels;
import coldproof.reason.verdict.Compared;
import coldproof.report.export.StudyExport;
import coldproof.report.export.TidyTable;
import coldproof.report.export.TraceColumns;
import coldproof.report.export.VerdictColumns;
import coldproof.report.html.HtmlPage;
import coldproof.report.page.Page;
import coldproof.report.page.StudyContent;
import coldproof.report.page.StudyPage;
import coldproof.report.plain.MarkdownPage;
import coldproof.report.plain.TextPage;
import coldproof.report.text.Figures;
import coldproof.study.PlanFrozen;
import coldproof.study.StudyState;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.IntConsumer;

/** Makes the report of a study. */
public final class ReportJob {
    private ReportJob() {}

    /**
     * What to make.
     *
     * @param study the study folder
     * @param format how it is written
     * @param out the file to write; empty: {@code report} with the ending of its format in the study folder
     * @param names whether the names people signed with are shown
     */
    public record Request(Path study, Format format, Optional<Path> out, boolean names) {
        Path file() {
            return out.orElse(format == Format.HTML ? StudyFolder.report(study) : study.resolve("report." + format.ending()));
        }
    }

    /** How a report is written. */
    public enum Format {
        /** One page with plots. */
        HTML("html"),
        /** For a forum or a repository. */
        MARKDOWN("md"),
        /** Plain text, 80 columns. */
        TEXT("txt");

        private final String ending;

        Format(String ending) {
            this.ending = ending;
        }

        /** The word for it. */
        public String word() {
            return ConstantWord.of(this);
        }

        String ending() {
            return ending;
        }

        String text(Page page) {
            return switch (this) {
                case HTML -> HtmlPage.of(page);
                case MARKDOWN -> MarkdownPage.of(page);
                case TEXT -> TextPage.of(page);
            };
        }
    }

    /** How many trials of a study have a trace, for those who tell of progress. */
    public static int traces(Path study) {
        return LimiterJob.entries(StudyView.read(study)).size();
    }

    /** Writes {@code report.html} into a study folder, over the one before, and gives its path. */
    public static Path write(Path study) {
        return write(new Request(study, Format.HTML, Optional.empty(), false), read -> {});
    }

    /** The same of a study that was read and judged already. */
    public static Path write(StudyView study, List<VerdictJob.Answer> answers) {
        return write(new Request(study.folder(), Format.HTML, Optional.empty(), false), study, answers, read -> {});
    }

    /**
     * Writes a report. A trace that cannot be read is left out, and the report says so.
     *
     * @param tracesRead told how many traces are read so far
     * @return the file written
     * @throws Refused if the study cannot be read, or the file cannot be written
     */
    public static Path write(Request request, IntConsumer tracesRead) {
        StudyView study = StudyView.read(request.study());
        return write(request, study, VerdictJob.ofStudy(study), tracesRead);
    }

    private static Path write(Request request, StudyView study, List<VerdictJob.Answer> answers, IntConsumer tracesRead) {
        Path file = request.file();
        save(file, request.format().text(StudyPage.of(content(request, study, answers, tracesRead))));
        return file;
    }

    /**
     * The data of a study as tables, with its verdicts, what its traces show, and the dictionary of all columns last.
     *
     * @param tracesRead told how many traces are read so far
     * @throws Refused if the study cannot be read
     */
    public static List<TidyTable> data(Path folder, IntConsumer tracesRead) {
        StudyView study = StudyView.read(folder);
        List<TidyTable> further = new ArrayList<>(List.of(VerdictColumns.table(VerdictJob.ofStudy(study).stream().map(VerdictJob.Answer::compared).toList())));
        List<LimiterTrial> traces = TraceReading.of(LimiterJob.entries(study), RememberedColumns.remembered(study.folder()), tracesRead).readable();
        if (!traces.isEmpty()) {
            further.add(TraceColumns.table(traces));
        }
        return StudyExport.tables(study.plan(), study.state(), further);
    }

    private static StudyContent content(Request request, StudyView study, List<VerdictJob.Answer> judged, IntConsumer tracesRead) {
        List<Compared> answers = judged.stream().map(VerdictJob.Answer::compared).toList();
        List<String> problems = study.problems().stream().map(Problem::what).toList();
        return new StudyContent(study.plan(), planText(study), study.frozen(), study.sheet(), study.state(), answers, study.deviations(), problems, RunsJob.ofStudy(study),
                traces(study, tracesRead), new StudyContent.Made(version(), digests(study)), request.names());
    }

    /** The text that was frozen; of a plan that is not, its file. */
    private static Optional<String> planText(StudyView study) {
        StudyState state = study.state();
        if (state.plan().isEmpty()) {
            return Optional.of(PlanFile.of(study.folder()).text());
        }
        return state.plan().map(frozen -> frozen.event()).flatMap(PlanFrozen::planText);
    }

    private static StudyContent.Traces traces(StudyView study, IntConsumer tracesRead) {
        List<LimiterTable.Entry> entries = LimiterJob.entries(study);
        TraceReading reading = TraceReading.of(entries, RememberedColumns.remembered(study.folder()), tracesRead);
        List<LimiterTrial> trials = reading.readable();
        List<String> unread = new ArrayList<>();
        for (int i = 0; i < entries.size(); i++) {
            if (reading.trials().get(i).isEmpty()) {
                unread.add("that of trial " + Figures.fixed(entries.get(i).order(), 0));
            }
        }
        return trials.isEmpty() ? new StudyContent.Traces(trials, unread, Optional.empty(), Map.of())
                : new StudyContent.Traces(trials, unread, Optional.of(LimiterJob.explained(study, trials, KnownLimits.NONE)), PinnedChannels.of(trials, KnownLimits.NONE));
    }

    private static List<StudyContent.Digest> digests(StudyView study) {
        List<StudyContent.Digest> digests = new ArrayList<>();
        digests.add(new StudyContent.Digest(study.frozen() ? "plan.yaml, as frozen" : "plan.yaml", study.planDigest()));
        if (StudyFolder.hasJournal(study.folder())) {
            digests.add(new StudyContent.Digest("journal.jsonl", PlanFile.digest(bytes(StudyFolder.journal(study.folder())))));
        }
        SortedSet<String> traces = new TreeSet<>();
        study.state().trials().forEach(trial -> trial.recorded().trace().filter(trace -> Files.isRegularFile(study.folder().resolve(trace))).ifPresent(traces::add));
        if (!traces.isEmpty()) {
            StringBuilder lines = new StringBuilder();
            traces.forEach(trace -> lines.append(PlanFile.digest(bytes(study.folder().resolve(trace)))).append("  ").append(trace).append('\n'));
            digests.add(new StudyContent.Digest("a list of the traces, each line the digest, two spaces and the name: " + traces.size() + " files",
                    PlanFile.digest(lines.toString().getBytes(StandardCharsets.UTF_8))));
        }
        return digests;
    }

    private static byte[] bytes(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException failed) {
            throw new Refused(Problem.of("the file cannot be read: " + DiskTrouble.reason(failed), Place.named(file.toString()), "a readable file",
                    "Check the folder and its permissions."));
        }
    }

    private static String version() {
        String version = ReportJob.class.getPackage().getImplementationVersion();
        return version == null ? "(unpackaged)" : version;
    }

    /** Writes beside the file and moves it into place, so that a report is never half written. */
    static void save(Path file, String text) {
        Path absolute = file.toAbsolutePath();
        Path beside = absolute.resolveSibling(absolute.getFileName() + ".new");
        try {
            Files.writeString(beside, text, StandardCharsets.UTF_8);
            try {
                Files.move(beside, absolute, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } catch (AtomicMoveNotSupportedException elsewhere) {
                Files.move(beside, absolute, StandardCopyOption.REPLACE_EXISTING);
            }
        } catch (IOException failed) {
            throw new Refused(Problem.of("the report cannot be written: " + DiskTrouble.reason(failed), Place.named(file.toString()), "a folder that can be written to",
                    "Name another file with --out FILE."));
        }
    }
}
