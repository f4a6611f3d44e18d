package coldproof.face;

import coldproof.files.journal.Damage;
import coldproof.files.journal.JournalReader;
import coldproof.files.journal.Reading;
import coldproof.study.Entry;
import coldproof.study.EventKind;
import coldproof.study.TrialRecorded;
import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Kills the program with signal 9 at random moments while trials stream in, and looks each time whether every trial it had acknowledged is
 * in the journal exactly once and whether it goes on with the right one. Alternates between {@code record} and a piped {@code log}.
 *
 * <p>By hand, with the packaged program: {@code java -cp target/classes:target/test-classes:target/coldproof/lib/* coldproof.face.KillHarness
 * target/coldproof/bin/coldproof 300}.
 */
final class KillHarness {
    private static final int KILLS_PER_STUDY = 25;
    private static final int TRIALS_PER_LEVEL = 3000;
    private static final double SHOWN = 0.006; // a score is acknowledged with two or more decimals
    private static final Pattern ACKNOWLEDGED = Pattern.compile("^trial (\\d+) of .* ([0-9.]+) s$|Trial (\\d+): ([0-9.]+) s\\. Recorded\\.");
    private final List<String> program;
    private final Path folder;
    private final int latestMillis;
    private final SplittableRandom random;
    private final Tally tally = new Tally();

    /** What came of it. */
    static final class Tally {
        int kills;
        int acknowledged;
        int recorded;
        int lost;
        int doubled;
        int wrongResumes;
        int tornLines;
        int beforeTheFirst;

        boolean isClean() {
            return lost == 0 && doubled == 0 && wrongResumes == 0;
        }

        @Override
        public String toString() {
            return kills + " kills: " + acknowledged + " trials acknowledged, " + lost + " lost, " + doubled + " doubled, " + wrongResumes
                    + " resumed at a wrong trial; " + (recorded - acknowledged) + " recorded but not yet acknowledged, " + tornLines
                    + " last lines cut short and set aside, " + beforeTheFirst + " kills before the first trial of a run";
        }
    }

    /** Kills come up to so late after the start, or after the first trial. */
    KillHarness(List<String> program, Path folder, int latestMillis, long seed) {
        this.program = program;
        this.folder = folder;
        this.latestMillis = latestMillis;
        this.random = new SplittableRandom(seed);
    }

    /** Kills so often and says what came of it. */
    Tally run(int kills) throws IOException, InterruptedException {
        while (tally.kills < kills) {
            study(Math.min(KILLS_PER_STUDY, kills - tally.kills));
        }
        return tally;
    }

    private void study(int kills) throws IOException, InterruptedException {
        Path study = Files.createTempDirectory(folder, "study");
        Files.writeString(study.resolve("plan.yaml"), plan());
        finish("plan", "freeze", "--study", study.toString());
        Path answers = study.resolve("answers.txt");
        Files.writeString(answers, "\n" + "100.25\ny\n100.5\ny\n99.75\ny\n".repeat(TRIALS_PER_LEVEL));
        Map<Integer, Double> acknowledged = new TreeMap<>();
        for (int i = 0; i < kills; i++) {
            int expected = recorded(study).size() + 1;
            Map<Integer, Double> now = random.nextBoolean()
                    ? killed(Optional.empty(), "record", "--trials", "all", "--study", study.toString(), "--", "true")
                    : killed(Optional.of(answers.toFile()), "log", "--study", study.toString());
            judge(study, acknowledged, now, expected);
        }
    }

    private static String plan() {
        return "coldproof: 1\ntitle: Does the fan change the build?\ndevice: ridge desktop\nmetric: {name: build time, unit: s, better: lower}\n"
                + "compare: {factor: fan, baseline: auto, against: maximum}\nmatters: 2 %\nfactors:\n  fan: {change: per trial, levels: [auto, maximum]}\n"
                + "layout: {trials: " + TRIALS_PER_LEVEL + ", order: counterbalanced}\nseed: 418\n";
    }

    private Process start(Optional<File> in, String... words) throws IOException {
        List<String> command = new ArrayList<>(program);
        command.addAll(List.of(words));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        in.ifPresent(builder::redirectInput);
        return builder.start();
    }

    private void finish(String... words) throws IOException, InterruptedException {
        Process process = start(Optional.empty(), words);
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (process.waitFor() != 0) {
            throw new IllegalStateException(String.join(" ", words) + ": " + said);
        }
    }

    /** Starts the program, kills it while it starts or while trials stream in, and gives what it had acknowledged, by position. */
    private Map<Integer, Double> killed(Optional<File> in, String... words) throws IOException, InterruptedException {
        boolean whileStarting = random.nextInt(4) == 0;
        Process process = start(in, words);
        List<String> lines = new CopyOnWriteArrayList<>();
        CountDownLatch streams = new CountDownLatch(whileStarting ? 0 : 1);
        Thread reader = new Thread(() -> collect(process, lines, streams));
        reader.start();
        if (!streams.await(60, TimeUnit.SECONDS)) {
            throw new IllegalStateException("no trial in a minute, " + lines.size() + " lines, the last: " + lines.subList(Math.max(0, lines.size() - 5), lines.size()));
        }
        Thread.sleep(random.nextInt(latestMillis));
        process.toHandle().destroyForcibly(); // the handle: destroying the Process itself would close the pipe before it is read
        if (!process.waitFor(10, TimeUnit.SECONDS)) {
            throw new IllegalStateException("the process outlives signal 9");
        }
        reader.join();
        tally.kills++;
        Map<Integer, Double> acknowledged = new TreeMap<>();
        for (String line : lines) {
            Matcher matcher = ACKNOWLEDGED.matcher(line);
            if (matcher.find()) {
                int kind = matcher.group(1) == null ? 3 : 1;
                acknowledged.put(Integer.parseInt(matcher.group(kind)), Double.parseDouble(matcher.group(kind + 1)));
            }
        }
        return acknowledged;
    }

    /** Only whole lines count: what the pipe cuts off was not said. */
    private static void collect(Process process, List<String> lines, CountDownLatch streams) {
        try (BufferedReader out = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            StringBuilder line = new StringBuilder();
            for (int c = out.read(); c >= 0; c = out.read()) {
                if (c == '\n') {
                    lines.add(line.toString());
                    if (ACKNOWLEDGED.matcher(line).find()) {
                        streams.countDown();
                    }
                    line.setLength(0);
                } else {
                    line.append((char) c);
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<TrialRecorded> recorded(Path study) {
        List<TrialRecorded> trials = new ArrayList<>();
        for (Entry entry : JournalReader.read(study.resolve("journal.jsonl")).entries()) {
            if (entry.event().kind() == EventKind.TRIAL_RECORDED) {
                trials.add((TrialRecorded) entry.event());
            }
        }
        return trials;
    }

    private void judge(Path study, Map<Integer, Double> before, Map<Integer, Double> now, int expected) {
        Reading reading = JournalReader.read(study.resolve("journal.jsonl"));
        for (Damage damage : reading.damages()) {
            if (damage.kind() != Damage.Kind.TORN_TAIL && damage.kind() != Damage.Kind.LINE_BREAK_MISSING) {
                throw new IllegalStateException("kill " + tally.kills + " damaged " + study + ": " + reading.damages());
            }
            tally.tornLines++;
        }
        List<TrialRecorded> trials = recorded(study);
        Map<Integer, Double> scores = new TreeMap<>();
        for (TrialRecorded trial : trials) {
            tally.doubled += scores.put(trial.position(), trial.score()) == null ? 0 : 1;
        }
        int first = now.keySet().stream().findFirst().orElse(expected);
        tally.beforeTheFirst += now.isEmpty() ? 1 : 0;
        tally.wrongResumes += first == expected && trials.size() == scores.keySet().stream().max(Integer::compare).orElse(0) ? 0 : 1;
        tally.acknowledged += now.size();
        tally.recorded += trials.size() - (expected - 1);
        before.putAll(now);
        before.forEach((position, score) -> tally.lost += scores.containsKey(position) && Math.abs(scores.get(position) - score) < SHOWN ? 0 : 1);
    }

    /** {@code LAUNCHER KILLS [SEED]}: prints the tally; status 1 if anything was lost, doubled or resumed wrongly. */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        long seed = arguments.length > 2 ? Long.parseLong(arguments[2]) : 1;
        Path folder = Files.createTempDirectory("kills");
        Tally tally = new KillHarness(List.of(arguments[0]), folder, 700, seed).run(Integer.parseInt(arguments[1]));
        System.out.println(tally);
        System.exit(tally.isClean() ? 0 : 1);
    }
}
