package coldproof.face.cli;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The list of verbs, in the order of the job. */
final class Verbs {
    private Verbs() {}

    static List<VerbEntry> all() {
        return List.of(
                new VerbEntry("demo", "a whole study on simulated data, from plan to report", "coldproof demo"),
                new VerbEntry("plan", "makes, checks, shows and freezes the plan", "coldproof plan new --from chilled-air --study my-study"),
                new VerbEntry("noise", "run-to-run and session-to-session noise of studies or a table", "coldproof noise --study pilot"),
                new VerbEntry("runs", "how many runs it takes, or what so many can see",
                        "coldproof runs --layout sessions --effect 3% --noise 1.5% --session-noise 0.8% --trials-per-session 4"),
                new VerbEntry("rehearse", "the whole study simulated: how often it would decide, and how often wrongly", "coldproof rehearse --study my-study"),
                new VerbEntry("schedule", "the run sheet: every trial in its order", "coldproof schedule --study my-study"),
                new VerbEntry("caution", "go, take care or stop for this weather and device",
                        "coldproof caution --air -9C --humidity 70% --wind 3m/s --indoors 21C --indoor-humidity 45%"),
                new VerbEntry("record", "runs the workload of the next trial and logs it", "coldproof record --trials session -- ./render.sh {fan}"),
                new VerbEntry("trace", "reads a log of telemetry: boost, settling, sustained level, what heat does",
                        "coldproof trace --map power=P_pkg --ambient 21C log.csv"),
                new VerbEntry("log", "the checklist at the bench: asks for each step and records it", "coldproof log --study my-study"),
                new VerbEntry("verdict", "judges the change: PASS, FAIL or UNDECIDED",
                        "coldproof verdict --trials trials.csv --metric rate --better higher --factor fan --baseline auto --against maximum"),
                new VerbEntry("limiter", "what holds the device back under each condition, and what is ruled out",
                        "coldproof limiter --trials trials.csv --trace-column trace --factor fan --metric rate --better higher --session session"),
                new VerbEntry("ledger", "devices side by side, with what cannot be told from noise", "coldproof ledger plans/ledgers/trail-laptops.yaml"),
                new VerbEntry("journal", "checks, exports, repairs and merges the record of a study", "coldproof journal check"),
                new VerbEntry("report", "one self-contained page with plots, every trial and the method", "coldproof report --study my-study"),
                new VerbEntry("warm", "makes starting quick again after the program's folder was moved or Java changed", "coldproof warm"));
    }

    static Optional<VerbEntry> find(String name) {
        if (name.equals("pages")) {
            return Optional.of(new VerbEntry("pages", "prints the shell completion or the manual page", "coldproof pages completion"));
        }
        for (VerbEntry entry : all()) {
            if (entry.name().equals(name)) {
                return Optional.of(entry);
            }
        }
        return Optional.empty();
    }

    /** Makes the one verb that was asked for: the classes of the others stay asleep. */
    static Verb make(String name) {
        return switch (name) {
            case "demo" -> new DemoVerb();
            case "plan" -> new PlanVerb();
            case "noise" -> new NoiseVerb();
            case "runs" -> new RunsVerb();
            case "rehearse" -> new RehearseVerb();
            case "schedule" -> new ScheduleVerb();
            case "caution" -> new CautionVerb();
            case "record" -> new RecordVerb();
            case "trace" -> new TraceVerb();
            case "log" -> new LogVerb();
            case "verdict" -> new VerdictVerb();
            case "limiter" -> new LimiterVerb();
            case "ledger" -> new LedgerVerb();
            case "journal" -> new JournalVerb();
            case "report" -> new ReportVerb();
            case "pages" -> new PagesVerb();
            case "warm" -> new WarmVerb();
            default -> throw new IllegalArgumentException("no verb " + name);
        };
    }

    static List<String> names() {
        return all().stream().map(VerbEntry::name).toList();
    }

    static String overview() {
        StringBuilder out = new StringBuilder("coldproof: plan, record and judge a before-and-after test of a computer\n\n"
                + "  coldproof                 opens the console on the study in this folder\n  coldproof VERB [options]  does one thing; coldproof VERB --help explains it\n\n");
        for (VerbEntry entry : all()) {
            out.append(String.format(Locale.ROOT, "  %-10s %s%n", entry.name(), entry.purpose()));
        }
        return out.append("\nExit status: 0 done or PASS, 10 FAIL, 11 UNDECIDED, 2 wrong usage or input, 1 anything else.\n").toString();
    }
}
