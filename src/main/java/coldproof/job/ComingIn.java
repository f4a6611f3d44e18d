package coldproof.job;

import coldproof.files.folder.StudyFolder;
import coldproof.files.journal.DiskTrouble;
import coldproof.physics.CooldownFit;
import coldproof.physics.TimeConstant;
import coldproof.quantity.Refused;
import coldproof.reason.safety.StudySafety;
import coldproof.report.text.Figures;
import coldproof.trace.Channel;
import coldproof.trace.Series;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import java.util.stream.IntStream;

/**
 * How fast this device warms up in the room: measured from logs of its coming in where there are any, else typical of its class.
 *
 * @param timeConstant with its interval
 * @param remarks where it comes from, or why a log gives none
 */
record ComingIn(TimeConstant timeConstant, List<String> remarks) {
    /** Logs of a coming-in lie in a study's traces under names that begin so. */
    static final String PREFIX = "coming-in";
    /** The slowest part counts; these are asked. */
    private static final List<Channel> PARTS = List.of(Channel.BATTERY_TEMPERATURE, Channel.BOARD_TEMPERATURE, Channel.SURFACE_TEMPERATURE,
            Channel.DIE_TEMPERATURE);

    ComingIn {
        remarks = List.copyOf(remarks);
    }

    /**
     * From the logs of a study and those named.
     *
     * @param named logs the person names; one that cannot be read is refused, one of the study is only remarked on
     * @throws Refused if a named log cannot be read
     */
    static ComingIn of(StudySafety safety, Optional<Path> study, List<Path> named) {
        List<String> remarks = new ArrayList<>();
        List<TimeConstant> found = new ArrayList<>();
        named.forEach(log -> fit(log, found, remarks));
        study.map(ComingIn::logs).orElse(List.of()).forEach(log -> {
            try {
                fit(log, found, remarks);
            } catch (Refused unreadable) {
                remarks.add(log.getFileName() + " tells no warming up: " + unreadable.problems().get(0).what() + ".");
            }
        });
        TimeConstant slowest = safety.device().timeConstant();
        for (int i = 0; i < found.size(); i++) {
            slowest = i == 0 || found.get(i).likelySeconds() > slowest.likelySeconds() ? found.get(i) : slowest;
        }
        return new ComingIn(slowest, remarks);
    }

    private static List<Path> logs(Path study) {
        TreeSet<Path> logs = new TreeSet<>();
        Path traces = StudyFolder.traces(study);
        if (!Files.isDirectory(traces)) {
            return List.of();
        }
        try (DirectoryStream<Path> entries = Files.newDirectoryStream(traces, PREFIX + "*")) {
            entries.forEach(logs::add);
        } catch (IOException failed) {
            throw new Refused(coldproof.quantity.Problem.of("the traces cannot be listed: " + DiskTrouble.reason(failed),
                    coldproof.quantity.Place.named(traces.toString()), "a readable folder", "Check its permissions."));
        }
        return List.copyOf(logs);
    }

    private static void fit(Path log, List<TimeConstant> found, List<String> remarks) {
        Series series = TraceJob.run(log, List.of(), OptionalDouble.empty(), bytes -> {}).series();
        String why = "it has no temperature of battery, board, surface or die";
        TimeConstant slowest = null;
        Channel part = null;
        for (Channel channel : PARTS) {
            if (!series.has(channel)) {
                continue;
            }
            CooldownFit.Outcome outcome = outcome(series, channel);
            why = outcome.unusable().map(CooldownFit.Unusable::sentence).orElse(why);
            if (outcome.fit().isPresent() && (slowest == null || outcome.fit().get().timeConstant().likelySeconds() > slowest.likelySeconds())) {
                slowest = outcome.fit().get().timeConstant();
                part = channel;
            }
        }
        if (slowest == null) {
            remarks.add(log.getFileName() + " tells no time constant: " + why + ".");
            return;
        }
        found.add(slowest);
        remarks.add("Warming up measured from " + log.getFileName() + " (" + part.label() + "): time constant " + Figures.fixed(slowest.likelySeconds() / 60, 1)
                + " min, " + Figures.fixed(slowest.lowSeconds() / 60, 1) + " to " + Figures.fixed(slowest.highSeconds() / 60, 1) + ".");
    }

    private static CooldownFit.Outcome outcome(Series series, Channel channel) {
        int[] rows = IntStream.range(0, series.size()).filter(row -> !Double.isNaN(series.value(channel, row))).toArray();
        double[] seconds = Arrays.stream(rows).mapToDouble(series::seconds).toArray();
        double[] celsius = Arrays.stream(rows).mapToDouble(row -> series.value(channel, row)).toArray();
        return CooldownFit.fit(seconds, celsius, OptionalDouble.empty());
    }
}
