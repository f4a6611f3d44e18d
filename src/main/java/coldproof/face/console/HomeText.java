package coldproof.face.console;

import coldproof.job.StudyOverview;
import coldproof.job.StudyView;
import coldproof.plan.NoiseAssumption;
import coldproof.plan.Plan;
import coldproof.report.text.Figures;
import coldproof.report.text.Harmless;
import coldproof.report.text.ProblemText;
import coldproof.report.text.Wrap;
import coldproof.study.Session;
import java.util.Optional;

/** What the console opens on: the study, what is done, what comes next. */
final class HomeText {
    private static final int LABEL = 11;
    private final int columns;
    private final StringBuilder out = new StringBuilder();

    private HomeText(int columns) {
        this.columns = columns;
    }

    /** The whole text, lines ended. */
    static String of(StudyOverview overview, Suggestion next, int columns) {
        HomeText text = new HomeText(columns);
        switch (overview.stage()) {
            case NO_STUDY -> text.nothing(overview);
            case BROKEN -> text.out.append(ProblemText.of(overview.problems()));
            case PLANNED, RUNNING, RUN -> text.study(overview);
        }
        text.next(overview, next);
        return text.out.toString();
    }

    private void nothing(StudyOverview overview) {
        Wrap.indented("No study in this folder: " + Harmless.line(overview.folder().toAbsolutePath().normalize().toString()), "", columns, out);
        out.append('\n');
        line("guided", "be asked, step by step, for a plan of your own");
        line("ready", "start from a ready plan and change it");
        line("demo", "see the whole job on simulated data, in a second");
        line("study DIR", "open the study in another folder");
    }

    private void study(StudyOverview overview) {
        StudyView study = overview.study().orElseThrow();
        Plan plan = study.plan();
        Wrap.indented(Harmless.line(plan.title()), "", columns, out);
        Wrap.indented(Harmless.line(plan.device()) + "; " + Harmless.line(overview.folder().toAbsolutePath().normalize().toString()), "", columns, out);
        out.append('\n');
        line("plan", overview.stage() == StudyOverview.Stage.PLANNED ? "written, not frozen yet" : study.changedSinceFrozen()
                ? "frozen; plan.yaml was changed since" + (study.keepsFrozen() ? ": the frozen one counts" : "") : "frozen");
        line("noise", plan.noise().isPresent() ? noise(plan.noise().get()) : "not known: a pilot would tell");
        int sessions = study.sheet().sessions();
        line("run sheet", study.sheet().positions().size() + " trials in " + sessions + (sessions == 1 ? " session" : " sessions"));
        line("trials", trials(study));
        line("report", overview.reported() ? "made: report.html" : "not made yet");
        if (study.state().simulated().isPresent()) {
            line("SIMULATED", Harmless.line(study.state().simulated().get()));
        }
        int deviations = overview.stage() == StudyOverview.Stage.PLANNED ? 0 : study.deviations().size();
        if (deviations > 0) {
            line("deviations", deviations + (deviations == 1 ? "; verdict names it" : "; verdict names them"));
        }
        if (!overview.problems().isEmpty()) {
            out.append(ProblemText.of(overview.problems()));
        }
    }

    private static String noise(NoiseAssumption noise) {
        return "run to run " + Figures.given(noise.runCvPercent()) + ", session to session " + Figures.given(noise.sessionCvPercent()) + ", from: "
                + Harmless.line(noise.from());
    }

    private static String trials(StudyView study) {
        int recorded = study.state().trials().size();
        int skipped = study.state().skipped().size();
        Optional<Session> open = study.state().openSession();
        String session = open.isEmpty() ? "" : "; session " + open.get().number() + " is open" + (study.state().paused() ? ", paused" : "");
        return recorded + " recorded" + (skipped == 0 ? "" : ", " + skipped + " skipped") + ", " + study.toCome() + " to come" + session;
    }

    private void next(StudyOverview overview, Suggestion next) {
        String what = overview.stage() == StudyOverview.Stage.NO_STUDY ? "guided" : next.line();
        out.append('\n');
        Wrap.indented("Next: " + Harmless.line(next.why()), "", columns, out);
        Wrap.indented("Enter alone does it (" + what + "). help lists every verb, Tab completes, quit leaves.", "", columns, out);
    }

    private void line(String label, String text) {
        Wrap.labelled(label, LABEL, text, columns, out);
    }
}
